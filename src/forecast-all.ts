import { InputError } from './errors.js';
import type { ForecastedFile } from './forecast-result.js';
import { partsOfFile, type Request } from './forecast-side.js';
import type { Failure } from './report/failure.js';
import type { Settings } from './settings.js';
import type { Outcome } from './side-jobs.js';
import type { SidePool } from './side-pool.js';

export { kernelIsAvailable } from './analysis/analyse-part.js';

/** How the files of a run are to be forecast. */
export interface SideRun {
  readonly pool: SidePool;
  readonly settings: Settings;
  /** What is asked of a file. */
  readonly requestFor: (path: string) => Request;
  /** Adds up the bytes of sound that are done, over all files. */
  readonly progress: BigInt64Array;
}

/**
 * The forecasts of files, in their order, whatever is done first; failures that are known already
 * keep their place among them. A file that fails costs itself only. So many files are begun ahead
 * of the one that is waited for that no thread is idle, and no more: memory does not grow with
 * their number.
 */
export async function* forecastAll(
  inputs: readonly (string | Failure)[],
  run: SideRun,
): AsyncGenerator<ForecastedFile | Failure, void, undefined> {
  const ahead = run.pool.jobs === 1 ? 1 : 2 * run.pool.jobs;
  const begun: Promise<ForecastedFile | Failure>[] = [];
  for (const input of inputs) {
    begun.push(typeof input === 'string' ? forecastOne(input, run) : Promise.resolve(input));
    const first = begun.length >= ahead ? begun.shift() : undefined;
    if (first !== undefined) yield await first;
  }
  for (const last of begun) yield await last;
}

/** Never rejects: whatever goes wrong is this file's. */
async function forecastOne(path: string, run: SideRun): Promise<ForecastedFile | Failure> {
  try {
    return await forecastIn(run, path);
  } catch (error) {
    if (error instanceof InputError) {
      return { path: error.path, code: error.code, message: error.message };
    }
    const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
    const reason = stack.split('\n')[0] ?? '';
    const message = `${path}: this is a bug in furrow, not in the file; please report it: ${reason}`;
    return { path, code: 'crashed', message, stack };
  }
}

async function forecastIn(run: SideRun, path: string): Promise<ForecastedFile> {
  const { pool, settings, requestFor, progress } = run;
  const job = { path, settings, progress };
  const parts = await partsOfFile(path, settings);
  const request = requestFor(path);
  // One thread does a file's parts in their order.
  if (pool.jobs === 1 || parts.length <= 1) {
    return resultOf(await pool.run.file({ ...job, request }));
  }
  const measured = await Promise.all(parts.map((part) => pool.run.part({ ...job, part })));
  return resultOf(await pool.run.parts({ ...job, request, parts: measured.map(resultOf) }));
}

/** @throws InputError if the file was refused; of several parts the first in the file says why */
function resultOf<T>(outcome: Outcome<T>): T {
  if ('value' in outcome) return outcome.value;
  const { path, code, message } = outcome.refusal;
  throw new InputError(path, code, message);
}
