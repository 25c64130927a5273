// @ts-check
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { noiseWav } from './noise-wav.mjs';
import { COMMAND } from './watch-process.mjs';

/** @typedef {Map<string, Buffer>} Files by their names */
/** @typedef {{ sides: string, out: string, level: string }} Place */

/**
 * Commands that write over what an earlier run of another level has left.
 * @type {Record<'forecast' | 'watch', { args: (place: Place) => string[], isEndless: boolean }>}
 */
const COMMANDS = {
  forecast: {
    args: ({ sides, out, level }) =>
      ['forecast', sides, '--no-discovery', '--quiet', '--level', level, '--jobs', '2'].concat(
        ['--csv', out, '--markers', out, '--save-motion', out, '--cue', out],
        ['--table', join(out, 'table.csv'), '--html', join(out, 'pages/')],
        ['--client', join(out, 'client.txt'), '--cutsheet', join(out, 'sheet.html')],
      ),
    isEndless: false,
  },
  watch: {
    args: ({ sides, out, level }) =>
      ['intake', '--watch', sides, '--out', out, '--no-discovery', '--quiet'].concat([
        '--level',
        level,
        '--settle',
        '0.1',
        '--jobs',
        '2',
      ]),
    isEndless: true,
  },
};
const UNFINISHED = /(^|\/)\.furrow-\d+-\d+\.tmp$/;

/**
 * Kills a command without warning while it writes over older results, and looks at what is there.
 * @param {'forecast' | 'watch'} name
 * @param {{ moments: number, sides: number }} wanted how often it is killed, over how many sides
 * @returns {Promise<{ moments: number, files: number, mixed: number, unfinished: number,
 *   broken: string[], isRight: boolean }>} broken: files that are neither the old nor the new one;
 *   mixed: kills that left some of each; unfinished: temporary files that are left;
 *   isRight: whether the next run made what it makes where nothing was killed
 */
export async function killMoments(name, { moments, sides: count }) {
  const { args, isEndless } = COMMANDS[name];
  const base = await mkdtemp(join(tmpdir(), 'furrow-kill-'));
  const [sides, old, out] = [join(base, 'sides'), join(base, 'old'), join(base, 'out')];
  for (const folder of [sides, old]) await mkdir(folder);
  for (let side = 1; side <= count; side++) {
    await writeFile(join(sides, `${side}.wav`), noiseWav(side, 20_000));
  }
  const run = async (/** @type {string} */ folder, /** @type {string} */ level) => {
    await toEnd(start(args({ sides, out: folder, level })), isEndless);
  };
  await run(old, '-3');
  await cp(old, out, { recursive: true });
  const began = performance.now();
  await run(out, '0');
  const lasts = performance.now() - began;
  const [before, after] = [await filesIn(old), await filesIn(out)];

  /** @type {string[]} */
  const broken = [];
  let [mixed, unfinished] = [0, 0];
  for (let moment = 0; moment < moments; moment++) {
    for (const [name, bytes] of before) await writeFile(join(out, name), bytes);
    const child = start(args({ sides, out, level: '0' }));
    const exited = once(child, 'exit');
    await setTimeout(lasts * (0.3 + 0.7 * Math.random()));
    child.kill('SIGKILL');
    await exited;
    const now = await filesIn(out);
    const names = [...now.keys()].filter((name) => !UNFINISHED.test(name));
    const isNew = names.filter((name) => now.get(name)?.equals(after.get(name) ?? Buffer.of()));
    const isOld = names.filter((name) => now.get(name)?.equals(before.get(name) ?? Buffer.of()));
    broken.push(...names.filter((name) => !isNew.includes(name) && !isOld.includes(name)));
    broken.push(...[...before.keys()].filter((name) => !now.has(name)));
    if (isNew.length > 0 && isNew.length < names.length) mixed += 1;
    unfinished = now.size - names.length;
  }
  await run(out, '0');
  const next = await filesIn(out);
  for (const name of next.keys()) if (UNFINISHED.test(name)) next.delete(name);
  await rm(base, { recursive: true });
  return { moments, files: after.size, mixed, unfinished, broken, isRight: areSame(next, after) };
}

/** @param {string[]} args */
function start(args) {
  return spawn(process.execPath, [COMMAND, ...args], { stdio: ['ignore', 'pipe', 'inherit'] });
}

/**
 * Lets a command come to its end; one that has none is asked to when nothing waits for a report.
 * @param {import('node:child_process').ChildProcess} child
 * @param {boolean} isEndless
 */
async function toEnd(child, isEndless) {
  let told = '';
  const count = (/** @type {RegExp} */ type) => told.match(type)?.length ?? 0;
  child.stdout?.on('data', (text) => {
    told += text;
    const waiting = count(/"(?:arrived|changed)"/g) - count(/"(?:examined|same-content)"/g);
    const isDone = isEndless && told.includes('"caught-up"') && waiting === 0;
    // A second signal would end it at once.
    if (isDone && !told.includes('"stopping"') && !child.killed) child.kill('SIGTERM');
  });
  const [code] = await once(child, 'exit');
  if (code !== 0) throw new Error(`a command that nobody killed ended with ${code}`);
}

/**
 * @param {string} folder
 * @returns {Promise<Files>}
 */
async function filesIn(folder) {
  const files = new Map();
  for (const entry of await readdir(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    files.set(path.slice(folder.length + 1), await readFile(path));
  }
  return files;
}

/**
 * @param {Files} one
 * @param {Files} other
 */
function areSame(one, other) {
  const isSame = (/** @type {[string, Buffer]} */ [name, bytes]) => other.get(name)?.equals(bytes);
  return one.size === other.size && [...one].every(isSame);
}
