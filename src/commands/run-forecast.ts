import { basename } from 'node:path';
import { Chalk } from 'chalk';
import { openSeverities } from '../accepted/apply-accepted.js';
import { findInputs } from '../analysis/find-inputs.js';
import type { ForecastedFile } from '../forecast-result.js';
import type { Severity } from '../model/forecast-types.js';
import { colourLevel } from '../report/colour.js';
import type { Failure } from '../report/failure.js';
import { type Reporter, reporterOf } from '../report/reporter.js';
import { safeText } from '../report/safe-text.js';
import { takesUnicode } from '../report/takes-unicode.js';
import { furrowVersion } from '../version.js';
import { chooseProfile } from './choose-profile.js';
import { BUG, exitCodeOf } from './exit-code.js';
import { type ForecastOptions, forecastOptions } from './forecast-options.js';
import { houseAcceptances } from './house-acceptances.js';
import { listPaths } from './list-paths.js';
import { olderSide } from './older-side.js';
import { openOutputs } from './outputs.js';
import { poolFor } from './pool-for.js';
import { showProgress } from './progress.js';
import type { Run } from './run.js';
import { filesOf, runInputs, totalBytes } from './run-inputs.js';
import { type StandardError, standardError } from './standard-error.js';
import type { Surroundings } from './surroundings.js';

const NO_VECTORS =
  'this machine has no WebAssembly vectors: the plain code does the same, many times slower';

/** Forecasts every input, tells each as it is done, and gives the exit code. */
export async function runForecast(
  paths: readonly string[],
  given: unknown,
  { surroundings, output }: Run,
): Promise<number> {
  const options = forecastOptions(given);
  const { stderr, isErrorTerminal, cwd } = surroundings;
  const errors = standardError(stderr, { isQuiet: options.quiet, isTerminal: isErrorTerminal });
  const settings = await chooseProfile(options, cwd, errors);
  const listed = await listPaths(paths, options.filesFrom, surroundings);
  const inputs = runInputs(await findInputs(listed, { cwd }), options.allowEmpty);
  const files = filesOf(inputs);
  const older = olderSide(options, inputs, cwd);
  const acceptances = await houseAcceptances(files, cwd, errors);
  const outputs = await openOutputs(options, files, cwd, errors);
  const reporter = await reporterFor(options, inputs.length, surroundings);
  const read = [...older.files, ...files];
  const bytes = await totalBytes(read, cwd);
  const pool = await poolFor(options.jobs ?? surroundings.cores, bytes);
  // Loaded only now, so that wrong usage is told at once.
  const { forecastAll, kernelIsAvailable } = await import('../forecast-all.js');
  if (!(await kernelIsAvailable())) errors.notice(NO_VECTORS);
  const progress = new BigInt64Array(new SharedArrayBuffer(8));
  const names = [...older.files, ...inputs].map((input) =>
    basename(typeof input === 'string' ? input : input.path),
  );
  const bytesDone = () => Number(Atomics.load(progress, 0));
  const shown = showProgress({ names, bytes, bytesDone }, errors, surroundings);
  const requestFor = (path: string) => ({
    levelDb: options.level,
    planner: options.planner,
    keepMotion: options.saveMotion !== undefined || older.files.length > 0,
    hashAudio: options.saveMotion !== undefined || acceptances.concerns(path),
  });
  const found = new Set<Severity>();
  const failures: Failure[] = [];
  const fail = async (failure: Failure) => {
    failures.push(failure);
    tell(failure, errors);
    for (const { failure: take } of outputs.all) take(failure);
    await output.write(reporter.failure(failure));
  };
  const side = async (file: ForecastedFile) => {
    const path = file.sources[0]?.path ?? file.name;
    const told = older.compare(acceptances.apply(path, file));
    for (const severity of openSeverities(told.forecast.findings)) found.add(severity);
    await outputs.write(({ side: take }) => take(told, path));
    shown.hide();
    await output.write(reporter.side(told));
  };
  try {
    const run = { pool, settings, requestFor, progress };
    for await (const result of forecastAll([...older.files, ...inputs], run)) {
      shown.fileDone();
      if (older.takes(result)) continue;
      if ('forecast' in result) await side(result);
      else await fail(result);
    }
    await outputs.write(({ end }) => end());
  } finally {
    shown.close();
    await pool.close();
  }
  await output.write(reporter.end());
  if (outputs.hasBug()) return BUG;
  return exitCodeOf(failures, outputs.unwritten(), found, options.failOn);
}

function tell({ message, stack }: Failure, errors: StandardError): void {
  // A name may hold a line break; a failure is one line.
  errors.error(safeText(message));
  if (stack !== undefined) errors.error(stack);
}

async function reporterFor(
  options: ForecastOptions,
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
