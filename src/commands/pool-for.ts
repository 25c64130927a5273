import { inlinePool, type SidePool, threadPool } from '../side-pool.js';

/** Bytes of files up to which threads cost more time than they save; it shows in nothing else. */
const WORTH_THREADS = 2 ** 24;

/** Where the files of a run are forecast. */
export async function poolFor(jobs: number, bytes: number): Promise<SidePool> {
  return jobs === 1 || bytes < WORTH_THREADS ? await inlinePool() : await threadPool(jobs);
}
