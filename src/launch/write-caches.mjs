// @ts-check
import { createWriteStream, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { devNull, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { writeUsualSide } from './usual-sides.mjs';

// Lays the code that usual runs use beside the bundles of a built tree, as V8 has compiled it:
// node src/launch/write-caches.mjs dist

const folder = resolve(process.argv[2] ?? 'dist');
const { codeCacheBytes, codeCachePath, loadBundle, loadedFiles } = createRequire(import.meta.url)(
  join(folder, 'launch.cjs'),
);

// What the commands say is of no interest here.
for (const name of ['stdout', 'stderr']) {
  const value = createWriteStream(devNull).setMaxListeners(0);
  Object.defineProperty(process, name, { value });
}

// V8 would forget what has not run for a while.
setFlagsFromString('--no-flush-bytecode');
const sides = mkdtempSync(join(tmpdir(), 'furrow-'));
try {
  await runAll();
} finally {
  rmSync(sides, { recursive: true });
}
// Code is taken by a V8 of the same flags only; a forecast sets some.
setFlagsFromString('--flush-bytecode');
const { V8_FLAGS } = await import(join(folder, 'compile-sparingly.js'));
for (const flag of V8_FLAGS) setFlagsFromString(flag.replace('--no-', '--'));
for (const [path, { script, source }] of loadedFiles) {
  const cache = codeCachePath(path);
  writeFileSync(`${cache}.new`, codeCacheBytes(script.createCachedData(), source));
  renameSync(`${cache}.new`, cache);
}

/** What is run often: other commands compile what they need, as without a cache. */
async function runAll() {
  const short = join(sides, 'short.wav');
  const long = join(sides, 'long.wav');
  writeUsualSide(short, 20);
  writeUsualSide(long, 250);
  await runCommand('--version');
  await runCommand('--help');
  for (const flags of [['--json'], [], ['--details', '--planner', 'tightest']]) {
    await runCommand('forecast', short, '--no-discovery', '--jobs', '1', ...flags);
  }
  await runCommand('forecast', sides, '--no-discovery', '--jobs', '2');
  await runCommand('intake', short, '--no-discovery', '--jobs', '1');
  await forecastInParts(long);
}

/**
 * In this process.
 * @param {string[]} args
 */
async function runCommand(...args) {
  await loadBundle('./cli.cjs').furrow(args);
  if (process.exitCode !== 0) throw new Error(`furrow ${args.join(' ')}: ${process.exitCode}`);
}

/**
 * As threads do it, in this one, whose code is kept.
 * @param {string} path
 */
async function forecastInParts(path) {
  const run = loadBundle('./side-worker.cjs');
  const { forecastAll } = await import(join(folder, 'forecast-all.js'));
  const { resolveProfile } = await import(join(folder, 'index.js'));
  const results = forecastAll([path], {
    pool: { jobs: 2, run, keep: () => {}, close: async () => {} },
    settings: resolveProfile(),
    requestFor: () => ({ levelDb: 0, planner: 'turn-ahead' }),
    progress: new BigInt64Array(new SharedArrayBuffer(8)),
  });
  for await (const result of results) {
    if (!('forecast' in result)) throw new Error(`not forecast: ${JSON.stringify(result)}`);
  }
}
