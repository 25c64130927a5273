import { basename } from 'node:path';
import { openSeverities } from '../accepted/apply-accepted.js';
import type { ForecastedFile, SourceFile } from '../forecast-result.js';
import type { Request } from '../forecast-side.js';
import type { Severity } from '../model/forecast-types.js';
import type { SideInput } from '../open-side.js';
import type { Failure } from '../report/failure.js';
import { mixedFormatsText } from '../report/mixed-formats-text.js';
import type { Reporter } from '../report/reporter.js';
import { safeText } from '../report/safe-text.js';
import type { ToldFile } from '../report/told-file.js';
import type { Settings } from '../settings.js';
import type { SidePool } from '../side-pool.js';
import { BUG, exitCodeOf } from './exit-code.js';
import type { Outputs } from './outputs.js';
import { poolFor } from './pool-for.js';
import { showProgress } from './progress.js';
import type { Run } from './run.js';
import { totalBytes } from './run-inputs.js';
import type { StandardError } from './standard-error.js';
import { outlasting } from './standard-output.js';

export const NO_VECTORS =
  'this machine has no WebAssembly vectors: the plain code does the same, many times slower';

/** Sides to forecast, and where to tell of them. */
export interface ForecastRun {
  readonly inputs: readonly (SideInput | Failure)[];
  /** Every file that is read for them. */
  readonly files: readonly string[];
  /** For inputs that are files. */
  readonly settings: Settings;
  readonly requestFor: (input: SideInput) => Request;
  /** What a run adds to a forecast; null for one that is not told by itself. */
  readonly told: (file: ForecastedFile, input: SideInput) => ToldFile | null;
  readonly outputs: Outputs;
  readonly reporter: Reporter;
  readonly errors: StandardError;
  /** Threads that are begun already. */
  readonly pool?: SidePool | undefined;
  readonly jobs: number | undefined;
  readonly failOn: Severity | undefined;
}

/** Forecasts every input, tells each as it is done, and gives the exit code. */
export async function tellForecasts(
  { inputs, files, settings, requestFor, told, outputs, reporter, errors, ...run }: ForecastRun,
  { surroundings, output }: Pick<Run, 'surroundings' | 'output'>,
): Promise<number> {
  // Files that are asked for are written for the reader's sake or not.
  const { write } = outputs.all.length === 0 ? output : outlasting(output);
  const bytes = await totalBytes(files, surroundings.cwd);
  const pool = run.pool ?? (await poolFor(run.jobs ?? surroundings.cores, bytes));
  // Loaded only now, so that wrong usage is told at once.
  const { forecastAll, kernelIsAvailable } = await import('../forecast-all.js');
  if (!(await kernelIsAvailable())) errors.notice(NO_VECTORS);
  const progress = new BigInt64Array(new SharedArrayBuffer(8));
  const bytesDone = () => Number(Atomics.load(progress, 0));
  const shown = showProgress({ names: inputs.map(nameOf), bytes, bytesDone }, errors, surroundings);
  const found = new Set<Severity>();
  const failures: Failure[] = [];
  const sources: SourceFile[] = [];
  const fail = async (failure: Failure) => {
    failures.push(failure);
    tell(failure, errors);
    for (const { failure: take } of outputs.all) take(failure);
    await write(reporter.failure(failure));
  };
  const side = async (file: ForecastedFile, input: SideInput) => {
    const toTell = told(file, input);
    if (toTell === null) return;
    // Tracks of a sheet may differ: they are brought to one rate.
    if (typeof input === 'string') sources.push(...file.sources);
    for (const severity of openSeverities(toTell.forecast.findings)) found.add(severity);
    await outputs.write(({ side: take }) => take(toTell, outputKey(input), input));
    shown.hide();
    await write(reporter.side(toTell));
  };
  try {
    const results = forecastAll(inputs, { pool, settings, requestFor, progress });
    for (const input of inputs) {
      const { value: result } = await results.next();
      if (result === undefined) throw new Error('an input without a result');
      shown.fileDone();
      if ('forecast' in result && !isFailure(input)) await side(result, input);
      else if (!('forecast' in result)) await fail(result);
    }
    await outputs.write(({ end }) => end());
  } finally {
    shown.close();
    await pool.close();
  }
  await write(reporter.end());
  const mixed = mixedFormatsText(sources);
  if (mixed !== null) errors.notice(mixed);
  if (outputs.hasBug()) return BUG;
  return exitCodeOf(failures, outputs.unwritten(), found, run.failOn);
}

/** What outputs know a side by: a path, and of a sheet's side what its file is named after. */
export function outputKey(input: SideInput): string {
  if (typeof input === 'string') return input;
  return `${input.sheet}/${input.name.replaceAll(/[\\/]/g, '_')}.side`;
}

function isFailure(input: SideInput | Failure): input is Failure {
  return typeof input !== 'string' && 'code' in input;
}

function nameOf(input: SideInput | Failure): string {
  if (typeof input === 'string') return basename(input);
  return isFailure(input) ? basename(input.path) : input.name;
}

function tell({ message, stack }: Failure, errors: StandardError): void {
  // A name may hold a line break; a failure is one line.
  errors.error(safeText(message));
  if (stack !== undefined) errors.error(stack);
}
