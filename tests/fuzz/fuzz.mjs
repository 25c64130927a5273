// @ts-check
import { randomInt } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { parseArgs } from 'node:util';
import { buildWorker } from './build-worker.mjs';
import { tryProperties } from './properties.mjs';
import { runWorker } from './run-worker.mjs';

// Tries furrow on files with something wrong, by processes of their own: npm run fuzz
// --count N files, 100,000 unless said; --seed N of another run; --only INDEX of that run;
// --jobs N; --rounds N of all property tests, each with a seed of its own, 1 unless said.

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '100000' },
    seed: { type: 'string', default: String(randomInt(2 ** 31)) },
    only: { type: 'string' },
    jobs: { type: 'string', default: String(availableParallelism()) },
    rounds: { type: 'string', default: '1' },
  },
});
const [seed, count] = [Number(values.seed), Number(values.count)];
const first = values.only === undefined ? 0 : Number(values.only);
const end = values.only === undefined ? count : first + 1;
say(`seed ${seed}, files ${first} to ${end - 1}`);

const worker = await buildWorker();
/** @type {Map<string, Map<string, number>>} By what a file was made from, how often what came of it. */
const outcomes = new Map();
let [bugs, cpuSeconds, slowest, peakBytes, done] = [0, 0, 0, 0, 0];
let next = first;
const queue = {
  take: () => (next < end ? next++ : null),
  /** @param {import('./run-worker.mjs').Result} result */
  tell: (result) => {
    const of = outcomes.get(result.name) ?? new Map();
    outcomes.set(result.name, of.set(result.outcome, (of.get(result.outcome) ?? 0) + 1));
    if (result.bug !== undefined) tellBug(result);
    cpuSeconds += result.cpuSeconds;
    slowest = Math.max(slowest, result.cpuSeconds);
    peakBytes = Math.max(peakBytes, result.peakBytes);
    if (++done % 5000 === 0) process.stderr.write(`${done} files, ${bugs} bugs\n`);
  },
};
await Promise.all(
  Array.from({ length: Number(values.jobs) }, () => runWorker(worker, seed, queue)),
);

for (const [name, of] of [...outcomes].sort(([one], [other]) => (one < other ? -1 : 1))) {
  const told = [...of].sort(([, one], [, other]) => other - one).map((pair) => pair.join(' '));
  say(`${name.padEnd(40)} ${told.join(', ')}`);
}
say(`\n${done} files, ${bugs} bugs; ${cpuSeconds.toFixed(0)} s of CPU time, the slowest file`);
say(`${slowest.toFixed(2)} s; the largest process ${(peakBytes / 1e6).toFixed(0)} MB`);

const failedRounds = tryProperties(Number(values.rounds));
if (bugs > 0 || failedRounds > 0 || done !== end - first) process.exitCode = 1;

/** @param {import('./run-worker.mjs').Result} result */
function tellBug({ index, name, bug }) {
  bugs += 1;
  say(`BUG: ${name}\n${bug}\nagain: npm run fuzz -- --rounds 0 --seed ${seed} --only ${index}\n`);
}

/** @param {string} line */
function say(line) {
  process.stdout.write(`${line}\n`);
}
