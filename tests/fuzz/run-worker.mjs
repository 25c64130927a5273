// @ts-check
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/**
 * What came of a file.
 * @typedef {object} Result
 * @property {number} index
 * @property {string} name of the good file that it was made from
 * @property {string} outcome
 * @property {string} [bug]
 * @property {number} cpuSeconds
 * @property {number} peakBytes the most that the process has taken so far
 */

/** The most memory that a process may take, whatever file it has. */
const MOST_BYTES = 300e6;
/** Of the heap alone, so that what grows without end dies. */
const HEAP_MEGABYTES = 200;
/** After so long without a word a process is taken for one that hangs, on whatever machine. */
const PATIENCE_SECONDS = 60;

/**
 * Has files tried until there are no more, by one process after another: one that dies or hangs
 * costs its file, one that takes too much memory is replaced as well.
 * @param {string} worker path of its code
 * @param {number} seed
 * @param {{ take: () => number | null, tell: (result: Result) => void }} queue
 */
export async function runWorker(worker, seed, queue) {
  const folder = await mkdtemp(join(tmpdir(), 'furrow-fuzz-'));
  let child = null;
  for (let index = queue.take(); index !== null; index = queue.take()) {
    child ??= begun(worker, folder);
    const result = await resultOf(child, seed, index);
    queue.tell(result);
    if (result.outcome !== 'died' && result.peakBytes <= MOST_BYTES) continue;
    child.kill('SIGKILL');
    child = null;
  }
  child?.disconnect();
  await rm(folder, { recursive: true });
}

/**
 * @param {string} worker
 * @param {string} folder that it may write into
 */
function begun(worker, folder) {
  const execArgv = [`--max-old-space-size=${HEAP_MEGABYTES}`, '--enable-source-maps'];
  // What it says as it dies is told by its exit.
  const child = fork(worker, [folder], { execArgv, stdio: ['ignore', 'ignore', 'ignore', 'ipc'] });
  // What cannot be sent is not answered, which is told.
  return child.on('error', () => {});
}

/**
 * @param {import('node:child_process').ChildProcess} child
 * @param {number} seed
 * @param {number} index
 * @returns {Promise<Result>}
 */
async function resultOf(child, seed, index) {
  const given = new AbortController();
  const { signal } = given;
  const timer = setTimeout(() => given.abort(), 1000 * PATIENCE_SECONDS);
  child.send([seed, index]);
  try {
    const [told] = await Promise.race([
      once(child, 'message', { signal }),
      once(child, 'exit', { signal }).then(([code, by]) => [died(index, `exit ${code ?? by}`)]),
    ]);
    if (told.peakBytes <= MOST_BYTES || told.bug !== undefined) return told;
    return { ...told, outcome: 'bug', bug: `${Math.round(told.peakBytes / 1e6)} MB` };
  } catch {
    return died(index, `no word for ${PATIENCE_SECONDS} s`);
  } finally {
    clearTimeout(timer);
    given.abort();
  }
}

/**
 * @param {number} index
 * @param {string} bug
 * @returns {Result}
 */
function died(index, bug) {
  return { index, name: 'unknown', outcome: 'died', bug, cpuSeconds: 0, peakBytes: 0 };
}
