import { rowsBetween, rowsOfSide } from './analysis/motion-rows.js';
import { InputError } from './errors.js';
import type { ForecastedFile } from './forecast-result.js';
import type { Request } from './forecast-side.js';
import type { SideInput } from './open-side.js';
import type { Failure } from './report/failure.js';
import type { Settings } from './settings.js';
import type { Outcome, PartsJob } from './side-jobs.js';
import { partsOfSide } from './side-parts.js';
import type { SidePool } from './side-pool.js';

export { kernelIsAvailable } from './analysis/kernel/load-kernel.js';

/** How the sides of a run are to be forecast. */
export interface SideRun {
  readonly pool: SidePool;
  /** For files; a sheet's side has its own. */
  readonly settings: Settings;
  /** What is asked of a side. */
  readonly requestFor: (input: SideInput) => Request;
  /** Adds up the bytes of sound that are done, over all sides. */
  readonly progress: BigInt64Array;
}

/**
 * The forecasts of sides, in their order, whatever is done first; failures that are known already
 * keep their place among them. A side that fails costs itself only. So many sides are begun ahead
 * of the one that is waited for that no thread is idle, and no more: memory does not grow with
 * their number.
 */
export async function* forecastAll(
  inputs: readonly (SideInput | Failure)[],
  run: SideRun,
): AsyncGenerator<ForecastedFile | Failure, void, undefined> {
  const ahead = run.pool.jobs === 1 ? 1 : 2 * run.pool.jobs;
  const begun: Promise<ForecastedFile | Failure>[] = [];
  const hasFailed = inputs.map(isFailure);
  for (const [at, input] of inputs.entries()) {
    const isLast = () => at === hasFailed.lastIndexOf(false);
    begun.push(
      isFailure(input)
        ? Promise.resolve(input)
        : forecastOne(input, run, isLast).then((result) => {
            hasFailed[at] = 'code' in result;
            return result;
          }),
    );
    const first = begun.length >= ahead ? begun.shift() : undefined;
    if (first !== undefined) yield await first;
  }
  for (const last of begun) yield await last;
}

function isFailure(input: SideInput | Failure): input is Failure {
  return typeof input !== 'string' && 'code' in input;
}

/**
 * Never rejects: whatever goes wrong is this side's.
 * @param isLast whether all sides behind it, if there are any, are known to have failed
 */
async function forecastOne(
  input: SideInput,
  run: SideRun,
  isLast: () => boolean,
): Promise<ForecastedFile | Failure> {
  try {
    return await forecastIn(run, input, isLast);
  } catch (error) {
    if (error instanceof InputError) {
      return { path: error.path, code: error.code, message: error.message };
    }
    const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
    const reason = stack.split('\n')[0] ?? '';
    const path = typeof input === 'string' ? input : `${input.sheet}: ${input.name}`;
    const message = `${path}: this is a bug in furrow, not in the file; please report it: ${reason}`;
    return { path, code: 'crashed', message, stack };
  }
}

async function forecastIn(
  run: SideRun,
  input: SideInput,
  isLast: () => boolean,
): Promise<ForecastedFile> {
  const { pool, requestFor, progress } = run;
  const { settings } = typeof input === 'string' ? run : input;
  const job = { input, settings, progress };
  const parts = await partsOfSide(input, settings);
  const request = requestFor(input);
  // Once the last side is measured all but one have nothing to do: ended, they give memory back.
  pool.keep(isLast() && parts.length > MOST_PARTS_APART ? 1 : pool.jobs);
  // One thread does a side's parts in their order.
  if (pool.jobs === 1 || parts.length <= 1) {
    return resultOf(await pool.run.file({ ...job, request }));
  }
  const rows = rowsOfSide(parts, settings);
  const outcomes = await Promise.all(
    parts.map((part) => {
      const own = rowsBetween(rows, part.firstQuarter, part.endQuarter);
      return pool.run.part({ ...job, part, rows: own });
    }),
  );
  const partsJob = { ...job, request, measured: { figures: outcomes.map(resultOf), rows } };
  // Of the last side the other threads have nothing else to do.
  return isLast() && parts.length <= MOST_PARTS_APART && request.planner !== 'tightest'
    ? await forecastApart(pool, partsJob)
    : resultOf(await pool.run.parts(partsJob));
}

/**
 * Parts of a side, some 32 minutes, up to which its tightest plan is made apart: beyond, the rows
 * that a second thread makes for it weigh more than the time.
 */
const MOST_PARTS_APART = 16;

/** The tightest plan, which takes as long as all the rest, in a thread of its own. */
async function forecastApart({ run }: SidePool, job: PartsJob): Promise<ForecastedFile> {
  const [tightest, file] = await Promise.all([
    run.tightest(job),
    run.parts({ ...job, tightest: { radiusUsed: Number.NaN } }),
  ]);
  const told = resultOf(file);
  return { ...told, forecast: { ...told.forecast, tightest: resultOf(tightest) } };
}

/** @throws InputError if the file was refused; of several parts the first in the file says why */
function resultOf<T>(outcome: Outcome<T>): T {
  if ('value' in outcome) return outcome.value;
  const { path, code, message } = outcome.refusal;
  throw new InputError(path, code, message);
}
