import { stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { Chalk } from 'chalk';
import { findInputs } from '../analysis/find-inputs.js';
import type { FoundInput } from '../analysis/found-input.js';
import type { Severity } from '../model/forecast-types.js';
import { colourLevel } from '../report/colour.js';
import type { Failure } from '../report/failure.js';
import { REPORTERS, type Reporter } from '../report/reporter.js';
import { safeText } from '../report/safe-text.js';
import { inlinePool, type SidePool, threadPool } from '../side-pool.js';
import { furrowVersion } from '../version.js';
import { chooseProfile } from './choose-profile.js';
import { exitCodeOf } from './exit-code.js';
import { type ForecastOptions, forecastOptions } from './forecast-options.js';
import { listPaths } from './list-paths.js';
import { showProgress } from './progress.js';
import type { Run } from './run.js';
import { type StandardError, standardError } from './standard-error.js';
import type { Surroundings } from './surroundings.js';

/** Bytes of files up to which threads cost more time than they save; it shows in nothing else. */
const WORTH_THREADS = 2 ** 24;

/** Forecasts every input, tells each as it is done, and gives the exit code. */
export async function runForecast(
  paths: readonly string[],
  given: unknown,
  { surroundings, output }: Run,
): Promise<number> {
  const options = forecastOptions(given);
  const { stderr, isErrorTerminal, cwd, cores } = surroundings;
  const errors = standardError(stderr, { isQuiet: options.quiet, isTerminal: isErrorTerminal });
  const settings = await chooseProfile(options, cwd, errors);
  const listed = await listPaths(paths, options.filesFrom, surroundings);
  const inputs = toForecast(await findInputs(listed, { cwd }), options.allowEmpty);
  const reporter = reporterFor(options, surroundings);
  const bytes = await totalBytes(inputs, cwd);
  const pool = await poolFor(options.jobs ?? cores, bytes);
  // Loaded only now, so that wrong usage is told at once.
  const { forecastAll } = await import('../forecast-all.js');
  const progress = new BigInt64Array(new SharedArrayBuffer(8));
  const shown = showProgress(
    { names: inputs.map(shownName), bytes, bytesDone: () => Number(Atomics.load(progress, 0)) },
    errors,
    surroundings,
  );
  const found = new Set<Severity>();
  const failures: Failure[] = [];
  try {
    const request = { levelDb: options.level, planner: options.planner };
    const results = forecastAll(inputs, { pool, settings, requestFor: () => request, progress });
    for await (const result of results) {
      shown.fileDone();
      if ('forecast' in result) {
        for (const { severity } of result.forecast.findings) found.add(severity);
        await output.write(reporter.side(result));
      } else {
        failures.push(result);
        tell(result, errors);
        await output.write(reporter.failure(result));
      }
    }
  } finally {
    shown.close();
    await pool.close();
  }
  await output.write(reporter.end());
  return exitCodeOf(failures, found, options.failOn);
}

/** Files, and what has failed already; an empty list is a failure like an empty folder. */
function toForecast(found: readonly FoundInput[], allowEmpty: boolean): (string | Failure)[] {
  const inputs = found.flatMap((input): (string | Failure)[] => {
    if (input.kind === 'file') return [input.path];
    if (input.kind === 'failure') {
      const { path, code, message } = input.error;
      return [{ path, code, message }];
    }
    const message = `${input.path}: no WAV file is in this folder`;
    return allowEmpty ? [] : [{ path: input.path, code: 'empty-folder', message }];
  });
  if (found.length > 0 || allowEmpty) return inputs;
  return [{ path: '-', code: 'empty-folder', message: '--files-from: the list names no file' }];
}

/** Bytes of the files there are; what cannot be looked at will be told when it is its turn. */
async function totalBytes(inputs: readonly (string | Failure)[], cwd: string): Promise<number> {
  let bytes = 0;
  for (const input of inputs) {
    if (typeof input !== 'string') continue;
    bytes += await stat(resolve(cwd, input)).then(
      ({ size }) => size,
      () => 0,
    );
  }
  return bytes;
}

async function poolFor(jobs: number, bytes: number): Promise<SidePool> {
  return jobs === 1 || bytes < WORTH_THREADS ? await inlinePool() : await threadPool(jobs);
}

function shownName(input: string | Failure): string {
  return basename(typeof input === 'string' ? input : input.path);
}

function tell({ message, stack }: Failure, errors: StandardError): void {
  // A name may hold a line break; a failure is one line.
  errors.error(safeText(message));
  if (stack !== undefined) errors.error(stack);
}

function reporterFor(options: ForecastOptions, surroundings: Surroundings): Reporter {
  const name = options.json ? 'json' : options.ndjson ? 'ndjson' : 'terminal';
  return REPORTERS[name]({
    units: options.units,
    paint: new Chalk({ level: colourLevel(surroundings) }),
    quarters: options.quarters,
    version: furrowVersion(),
  });
}
