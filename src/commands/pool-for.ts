import { inlinePool, type SidePool, threadPool } from '../side-pool.js';
import { totalBytes } from './run-inputs.js';

/** Bytes of files up to which threads cost more time than they save; it shows in nothing else. */
const WORTH_THREADS = 2 ** 24;

/** Where the files of a run are forecast. */
export async function poolFor(jobs: number, bytes: number): Promise<SidePool> {
  return isWorthThreads(jobs, bytes) ? await threadPool(jobs) : await inlinePool();
}

/**
 * The same pool, begun before the command is understood: to start, threads take as long as that.
 * Whoever asks for it closes it.
 * @param paths as they were given: files among them, of folders and patterns nothing is known yet
 * @returns null unless it is certain that there are to be threads
 */
export async function threadsAhead(
  paths: readonly string[],
  jobs: number,
  cwd: string,
): Promise<SidePool | null> {
  return isWorthThreads(jobs, await totalBytes(paths, cwd)) ? await threadPool(jobs) : null;
}

function isWorthThreads(jobs: number, bytes: number): boolean {
  return jobs > 1 && bytes >= WORTH_THREADS;
}
