import type { PartMotion } from './analysis/part-motion.js';
import { InputError } from './errors.js';
import { type Measured, type MeasureJob, measureJob } from './fit/fit-jobs.js';

/** Where the stretches of a side are measured. */
export interface FitPool {
  /** @throws InputError if a file was refused */
  readonly measure: (job: MeasureJob) => Promise<readonly PartMotion[]>;
  readonly close: () => Promise<void>;
}

/** As in side-pool.ts: a job that wants more ends its thread, not the process. */
const HEAP_MEBIBYTES = 512;
const YOUNG_MEBIBYTES = 2;

/** The one thread there is; a stretch at a time, so that memory holds one of them. */
export function inlineFitPool(): FitPool {
  let before: Promise<unknown> = Promise.resolve();
  return {
    measure: async (job) => {
      const mine = before.then(async () => await measureJob(job));
      before = mine.catch(() => {});
      return motionsOf(await mine);
    },
    close: async () => {},
  };
}

/**
 * As many threads as jobs are wanted at a time.
 * @param worker what the threads run
 */
export async function threadFitPool(
  jobs: number,
  worker = new URL('./fit-worker.js', import.meta.url),
): Promise<FitPool> {
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: worker.href,
    minThreads: jobs,
    maxThreads: jobs,
    concurrentTasksPerWorker: 1,
    resourceLimits: {
      maxOldGenerationSizeMb: HEAP_MEBIBYTES,
      maxYoungGenerationSizeMb: YOUNG_MEBIBYTES,
    },
  });
  return {
    measure: async (job) => motionsOf(await pool.run(job, { name: 'measure' })),
    close: async () => await pool.destroy(),
  };
}

function motionsOf(measured: Measured): readonly PartMotion[] {
  if ('motions' in measured) return measured.motions;
  const { path, code, message } = measured.refusal;
  throw new InputError(path, code, message);
}
