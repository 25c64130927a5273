import type { SideJobs } from './side-jobs.js';

/** Somewhere the jobs of sides are done. */
export interface SidePool {
  /** How many are done at a time. */
  readonly jobs: number;
  readonly run: SideJobs;
  /** How many threads are kept from now on when they have nothing to do; all at first. */
  readonly keep: (threads: number) => void;
  /** Ends its threads. */
  readonly close: () => Promise<void>;
}

/** Heap of a thread: a job that wants more ends its thread, not the process. */
const HEAP_MEBIBYTES = 512;
/**
 * Room for what a thread has just made: little, since each thread holds several times that, and
 * what a pass makes is not made on the heap.
 */
const YOUNG_MEBIBYTES = 2;

/** The one thread there is. */
export async function inlinePool(): Promise<SidePool> {
  const { sideJobs } = await import('./side-jobs.js');
  return { jobs: 1, run: sideJobs, keep: () => {}, close: async () => {} };
}

/**
 * As many threads as jobs are wanted at a time. Where a thread dies another takes its place, and
 * the job that it had is tried once more; after that it rejects.
 * @param worker what the threads run; another one and less memory are for tests
 */
export async function threadPool(
  jobs: number,
  worker = new URL('./side-worker.js', import.meta.url),
  { heapMebibytes = HEAP_MEBIBYTES } = {},
): Promise<SidePool> {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: worker.href,
    minThreads: jobs,
    maxThreads: jobs,
    concurrentTasksPerWorker: 1,
    resourceLimits: {
      maxOldGenerationSizeMb: heapMebibytes,
      maxYoungGenerationSizeMb: YOUNG_MEBIBYTES,
    },
  });
  return {
    jobs,
    run: {
      part: async (job) => await twice(() => pool.run(job, { name: 'part' })),
      parts: async (job) => await twice(() => pool.run(job, { name: 'parts' })),
      tightest: async (job) => await twice(() => pool.run(job, { name: 'tightest' })),
      file: async (job) => await twice(() => pool.run(job, { name: 'file' })),
    },
    keep: (threads) => {
      pool.options.minThreads = threads;
    },
    close: async () => await pool.destroy(),
  };
}

async function twice<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch {
    return await work();
  }
}
