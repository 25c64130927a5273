import { Chalk } from 'chalk';
import { findInputs } from '../analysis/find-inputs.js';
import type { FoundInput } from '../analysis/found-input.js';
import { InputError } from '../errors.js';
import type { ForecastedFile } from '../forecast-result.js';
import type { Severity } from '../model/forecast-types.js';
import { colourLevel } from '../report/colour.js';
import type { Failure } from '../report/failure.js';
import { REPORTERS, type Reporter } from '../report/reporter.js';
import { safeText } from '../report/safe-text.js';
import { furrowVersion } from '../version.js';
import { chooseProfile } from './choose-profile.js';
import { exitCodeOf } from './exit-code.js';
import { type ForecastOptions, forecastOptions } from './forecast-options.js';
import { listPaths } from './list-paths.js';
import type { Run } from './run.js';
import { standardError } from './standard-error.js';
import type { Surroundings } from './surroundings.js';

/** Forecasts every input, tells each as it is done, and gives the exit code. */
export async function runForecast(
  paths: readonly string[],
  given: unknown,
  { surroundings, output }: Run,
): Promise<number> {
  const options = forecastOptions(given);
  const errors = standardError(surroundings.stderr, options.quiet);
  const settings = await chooseProfile(options, surroundings.cwd, errors);
  const listed = await listPaths(paths, options.filesFrom, surroundings);
  const inputs = await findInputs(listed, { cwd: surroundings.cwd });
  const reporter = reporterFor(options, surroundings);
  // Loaded only now, so that wrong usage is told at once.
  const { forecastFile } = await import('../forecast-side.js');
  const request = { levelDb: options.level, planner: options.planner };
  const found = new Set<Severity>();
  let failures = 0;
  for (const input of inputs) {
    const result = await resultOf(input, options.allowEmpty, (path) =>
      forecastFile(path, settings, request),
    );
    if (result === null) continue;
    if ('forecast' in result) {
      for (const { severity } of result.forecast.findings) found.add(severity);
      await output.write(reporter.side(result));
    } else {
      failures += 1;
      // A name may hold a line break; a failure is one line.
      errors.error(safeText(result.message));
      await output.write(reporter.failure(result));
    }
  }
  await output.write(reporter.end());
  if (inputs.length === 0 && !options.allowEmpty) {
    errors.error('--files-from: the list names no file');
    failures += 1;
  }
  return exitCodeOf(failures, found, options.failOn);
}

/** null for an empty folder that is allowed to be empty. */
async function resultOf(
  input: FoundInput,
  allowEmpty: boolean,
  forecast: (path: string) => Promise<ForecastedFile>,
): Promise<ForecastedFile | Failure | null> {
  if (input.kind === 'failure') return failureOf(input.error);
  if (input.kind === 'empty-folder') {
    const message = `${input.path}: no WAV file is in this folder`;
    return allowEmpty ? null : { path: input.path, code: 'empty-folder', message };
  }
  try {
    return await forecast(input.path);
  } catch (error) {
    if (error instanceof InputError) return failureOf(error);
    throw error;
  }
}

function failureOf({ path, code, message }: InputError): Failure {
  return { path, code, message };
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
