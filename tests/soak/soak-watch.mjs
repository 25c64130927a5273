// @ts-check
import { mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { noiseWav, sha256 } from './noise-wav.mjs';
import { WAYS } from './upload.mjs';
import { startWatch } from './watch-process.mjs';

/** Uploads at a time. */
const UPLOADS = 12;
const JOBS = 2;
const REPORT = '.furrow.json';

/**
 * Sends files through a watch that is ended twice, once asked and once killed, while they go on.
 * @param {{ files: number, settleSeconds: number, patience: number }} wanted patience: ms without a
 *   new report after which what is missing is taken as missed
 */
export async function soakWatch({ files, settleSeconds, patience }) {
  const base = await mkdtemp(join(tmpdir(), 'furrow-soak-'));
  const [folder, out] = [join(base, 'in'), join(base, 'out')];
  await mkdir(folder);
  /** Contents that a path is to be reported with, in their order. */
  const expected = /** @type {Map<string, string[]>} */ (new Map());
  const told = /** @type {Map<string, string[]>} */ (new Map());
  /** Paths of which nothing is to be said. */
  const late = /** @type {Set<string>} */ (new Set());
  /** Resident bytes at each report, a list a process. */
  const resident = /** @type {number[][]} */ ([]);
  let [reports, lastReport] = [0, performance.now()];

  const start = async () => {
    const samples = /** @type {number[]} */ ([]);
    resident.push(samples);
    const options = ['--settle', String(settleSeconds), '--jobs', String(JOBS), '--quiet'];
    /** @type {import('./watch-process.mjs').WatchProcess | null} */
    let process = null;
    process = await startWatch(folder, out, options, ({ type, path }) => {
      if (path === undefined || !['examined', 'same-content', 'failed'].includes(type)) return;
      told.set(path, [...(told.get(path) ?? []), type]);
      reports += 1;
      lastReport = performance.now();
      samples.push(process?.residentBytes() ?? Number.NaN);
    });
    return process;
  };
  const isReported = async (/** @type {string} */ path, /** @type {string} */ content) => {
    const text = await readFile(join(out, `${path}${REPORT}`), 'utf8').catch(() => 'null');
    return JSON.parse(text)?.file.sha256 === content;
  };
  const reported = async (/** @type {string} */ path, /** @type {Buffer} */ bytes) => {
    for (const content = sha256(bytes); !(await isReported(path, content)); ) {
      if (performance.now() - lastReport > patience) return;
      await setTimeout(50);
    }
  };
  const until = async (/** @type {number} */ count) => {
    while (reports < count && performance.now() - lastReport < patience) await setTimeout(10);
  };

  let watch = await start();
  let next = 0;
  const upload = async () => {
    for (let turn = next++; turn < files; turn = next++) {
      const way = WAYS[turn % WAYS.length] ?? WAYS[0];
      await way?.(`side ${turn}`, {
        folder,
        bytes: noiseWav(turn + 1),
        others: noiseWav(turn),
        pause: 300 * settleSeconds,
        hurry: (path, begun) => {
          if (performance.now() - begun > 800 * settleSeconds) late.add(path);
        },
        whole: (path, bytes) => {
          expected.set(path, [...(expected.get(path) ?? []), sha256(bytes)]);
        },
        reported,
      });
    }
  };
  const uploading = Promise.all(Array.from({ length: UPLOADS }, upload));
  await until(0.15 * files);
  const asked = await watch.end('SIGTERM');
  await setTimeout(1000 * settleSeconds);
  watch = await start();
  await until(0.3 * files);
  await watch.end('SIGKILL');
  watch = await start();
  await uploading;
  for (const [path, contents] of expected) {
    while (!(await isReported(path, contents.at(-1) ?? ''))) {
      if (performance.now() - lastReport > patience) break;
      await setTimeout(100);
    }
  }
  // Whatever might be told once more has time to.
  await setTimeout(8000 * settleSeconds);
  const last = await watch.end('SIGTERM');
  const result = {
    expected: [...expected.values()].flat().length,
    exitCodes: [asked.code, last.code],
    stderr: asked.stderr + last.stderr,
    late: late.size,
    ...(await accounts(out, expected, told, late)),
    resident: resident.map(memoryOf),
  };
  await rm(base, { recursive: true });
  return result;
}

/**
 * What was told against what was to be.
 * @param {string} out
 * @param {Map<string, string[]>} expected
 * @param {Map<string, string[]>} told
 * @param {Set<string>} late
 */
async function accounts(out, expected, told, late) {
  /** @type {Record<'missing' | 'repeated' | 'untold' | 'unexpected' | 'examinedTwice', string[]>} */
  const misfits = { missing: [], repeated: [], untold: [], unexpected: [], examinedTwice: [] };
  const kept = new Map();
  const strays = [];
  for (const entry of await readdir(out, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    if (!path.endsWith(REPORT)) {
      strays.push(entry.name);
      continue;
    }
    const { file, result } = JSON.parse(await readFile(path, 'utf8'));
    kept.set(file.path, result === null ? 'failed' : file.sha256);
  }
  const examined = new Map();
  for (const [path, contents] of expected) {
    const types = told.get(path) ?? [];
    if (kept.get(path) !== contents.at(-1)) misfits.missing.push(path);
    if (types.length > contents.length && !late.has(path)) misfits.repeated.push(path);
    // The line may be missing of a report that was written just before the watch was killed.
    if (types.length < contents.length) misfits.untold.push(path);
    for (const [time, type] of types.entries()) {
      const content = contents[time];
      if (type === 'examined') examined.set(content, (examined.get(content) ?? 0) + 1);
    }
  }
  for (const path of kept.keys()) {
    if (!expected.has(path) && !late.has(path)) misfits.unexpected.push(path);
  }
  for (const [content, times] of examined) if (times > 1) misfits.examinedTwice.push(content);
  const count = (/** @type {string} */ type) =>
    [...told.values()].flat().filter((one) => one === type).length;
  return {
    told: { examined: count('examined'), same: count('same-content'), failed: count('failed') },
    misfits,
    strays,
  };
}

/**
 * Means over 200 reports of a process, MB: the first, while it still warms up; those after 400; the
 * last.
 * @param {number[]} samples
 */
function memoryOf(samples) {
  const mean = (/** @type {number[]} */ some) =>
    some.reduce((sum, one) => sum + one, 0) / some.length / 1e6;
  return {
    reports: samples.length,
    first: mean(samples.slice(0, 200)),
    warm: mean(samples.slice(400, 600)),
    last: mean(samples.slice(-200)),
  };
}
