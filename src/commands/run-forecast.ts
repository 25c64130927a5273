import { Chalk } from 'chalk';
import { findInputs } from '../analysis/find-inputs.js';
import { colourLevel } from '../report/colour.js';
import { type Reporter, reporterOf } from '../report/reporter.js';
import { takesUnicode } from '../report/takes-unicode.js';
import type { SidePool } from '../side-pool.js';
import { furrowVersion } from '../version.js';
import { chooseProfile, readBesides } from './choose-profile.js';
import { forecastOptions, type ReportOptions } from './forecast-options.js';
import { houseAcceptances } from './house-acceptances.js';
import { listPaths } from './list-paths.js';
import { olderSide } from './older-side.js';
import { openOutputs } from './outputs.js';
import type { Run } from './run.js';
import { filesOf, runInputs } from './run-inputs.js';
import { standardError } from './standard-error.js';
import type { Surroundings } from './surroundings.js';
import { type ForecastRun, tellForecasts } from './tell-forecasts.js';

/**
 * Forecasts every input, tells each as it is done, and gives the exit code.
 * @param pool threads that are begun already; null if there are none
 */
export async function runForecast(
  paths: readonly string[],
  given: unknown,
  { surroundings, output }: Run,
  pool: SidePool | null,
): Promise<number> {
  const options = forecastOptions(given);
  const { stderr, isErrorTerminal, cwd } = surroundings;
  const errors = standardError(stderr, { isQuiet: options.quiet, isTerminal: isErrorTerminal });
  const { settings, sources } = await chooseProfile(options, cwd, errors);
  const listed = await listPaths(paths, options.filesFrom, surroundings);
  const found = await findInputs(listed, { cwd, follow: options.follow });
  const inputs = runInputs(found, options.allowEmpty);
  const files = filesOf(inputs);
  const older = olderSide(options, inputs, cwd);
  const acceptances = await houseAcceptances(files, cwd, errors);
  const outputs = await openOutputs(options, files, cwd, errors, [
    ...files,
    ...readBesides(sources, options),
  ]);
  const reporter = await reporterFor(options, inputs.length, surroundings);
  const run: ForecastRun = {
    inputs: [...older.files, ...inputs],
    files: [...older.files, ...files],
    settings,
    requestFor: (input) => ({
      levelDb: options.level,
      planner: options.planner,
      keepMotion:
        options.saveMotion !== undefined || options.html !== undefined || older.files.length > 0,
      hashAudio: options.saveMotion !== undefined || acceptances.concerns(input),
    }),
    told: (file, input) =>
      older.takes(file, input) ? null : older.compare(acceptances.apply(input, file)),
    outputs,
    reporter,
    errors,
    pool: pool ?? undefined,
    jobs: options.jobs,
    failOn: options.failOn,
  };
  return await tellForecasts(run, { surroundings, output });
}

/** The reporter that the options ask for. */
export async function reporterFor(
  options: ReportOptions,
  inputs: number,
  surroundings: Surroundings,
): Promise<Reporter> {
  const name = options.json
    ? 'json'
    : options.ndjson
      ? 'ndjson'
      : options.scale
        ? 'scale'
        : 'terminal';
  return await reporterOf(name, {
    units: options.units,
    paint: new Chalk({ level: colourLevel(surroundings) }),
    ...(surroundings.columns === null ? {} : { columns: surroundings.columns }),
    ascii: !takesUnicode(surroundings.environment),
    isFolder: inputs > 1,
    details: options.details,
    brief: options.brief,
    commonLevel: options.commonLevel,
    quarters: options.quarters,
    version: furrowVersion(),
  });
}
