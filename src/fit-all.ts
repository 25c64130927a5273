import { appendRows } from './analysis/append-parts.js';
import { InputError } from './errors.js';
import type { SideFit } from './fit/fit-result.js';
import { type FitRequest, fitSide } from './fit/fit-side.js';
import { type MeasuredSide, measureSide } from './fit/measured-side.js';
import { type FitPool, inlineFitPool, threadFitPool } from './fit-pool.js';
import type { ForecastedFile } from './forecast-result.js';
import { forecastFile, forecastParts } from './forecast-side.js';
import type { SideInput } from './open-side.js';
import type { Failure } from './report/failure.js';
import type { Settings } from './settings.js';

/** How the sides of a run are to be fitted. */
export interface FitRun {
  /** For files; a sheet's side has its own. */
  readonly settings: Settings;
  readonly jobs: number;
  /** Bytes of sound that are to be read. */
  readonly bytes: number;
  readonly requestFor: (input: SideInput) => FitRequest;
  /** Hands the forecast of each side out too, as it is and without any remedy. */
  readonly withForecasts: boolean;
  /** Adds up the bytes of sound that are done, over all sides. */
  readonly progress: BigInt64Array;
}

/** A side's fit, and its forecast where that is asked for. */
export interface FittedSide {
  readonly input: SideInput;
  readonly fit: SideFit;
  readonly file: ForecastedFile | null;
}

/** As in pool-for.ts: up to so many bytes threads cost more time than they save. */
const WORTH_THREADS = 2 ** 24;

/**
 * The fits of sides, in their order, one after the other: the threads share one side's stretches.
 * Failures that are known already keep their place. A side that fails costs itself only.
 */
export async function* fitAll(
  inputs: readonly (SideInput | Failure)[],
  run: FitRun,
): AsyncGenerator<FittedSide | Failure, void, undefined> {
  const isSmall = run.jobs === 1 || run.bytes < WORTH_THREADS;
  const pool = isSmall ? inlineFitPool() : await threadFitPool(run.jobs);
  try {
    for (const input of inputs) {
      const isFailure = typeof input !== 'string' && 'code' in input;
      yield isFailure ? input : await fitOne(input, run, pool);
    }
  } finally {
    await pool.close();
  }
}

/** Never rejects: whatever goes wrong is this side's. */
async function fitOne(input: SideInput, run: FitRun, pool: FitPool): Promise<FittedSide | Failure> {
  try {
    const request = run.requestFor(input);
    const measured = await measureSide(input, run.settings, pool, run.progress);
    const file = run.withForecasts ? await forecastOf(input, measured, request) : null;
    return { input, fit: await fitSide(measured, request), file };
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

/** The same as `furrow forecast` makes, from what is measured already. */
async function forecastOf(
  input: SideInput,
  { settings, parts }: MeasuredSide,
  { levelDb, planner }: FitRequest,
): Promise<ForecastedFile> {
  const request = { levelDb, planner, keepMotion: true };
  if (parts.length === 0) return await forecastFile(input, settings, request);
  const rows = { ...appendRows(parts), silentQuarters: 0 };
  return await forecastParts(input, settings, request, { figures: parts, rows });
}
