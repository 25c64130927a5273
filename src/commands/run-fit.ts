import { Chalk } from 'chalk';
import { openSeverities } from '../accepted/apply-accepted.js';
import type { FitRequest } from '../fit/fit-side.js';
import type { Severity } from '../model/forecast-types.js';
import type { SideInput } from '../open-side.js';
import { resolveProfile } from '../profile/resolve-profile.js';
import { colourLevel } from '../report/colour.js';
import type { Failure } from '../report/failure.js';
import { fitReporter } from '../report/fit-reporter.js';
import { safeText } from '../report/safe-text.js';
import { takesUnicode } from '../report/takes-unicode.js';
import { furrowVersion } from '../version.js';
import { profileNotice, profileSources, readBesides } from './choose-profile.js';
import { BUG, exitCodeOf } from './exit-code.js';
import { fitInputs, isSheet } from './fit-inputs.js';
import { type FitOptions, fitOptions } from './fit-options.js';
import { listPaths } from './list-paths.js';
import { openOutputs } from './outputs.js';
import { showProgress } from './progress.js';
import type { Run } from './run.js';
import { totalBytes } from './run-inputs.js';
import { standardError } from './standard-error.js';
import { outputKey } from './tell-forecasts.js';

/** How often a side's sound is read: as it is, in all other ways at once, and with its remedies. */
const READS = 3;

/** Fits every input, tells each as it is done, and gives the exit code. */
export async function runFit(
  paths: readonly string[],
  given: unknown,
  { surroundings, output }: Run,
): Promise<number> {
  const options = fitOptions(given);
  const { stderr, isErrorTerminal, cwd } = surroundings;
  const errors = standardError(stderr, { isQuiet: options.quiet, isTerminal: isErrorTerminal });
  const sources = await profileSources(options, cwd);
  const settings = resolveProfile(sources);
  const listed = await listPaths(paths, options.filesFrom, surroundings);
  const inputs = await fitInputs(listed, sources, cwd, options);
  errors.notice(profileNotice(sources));
  const sides = inputs.filter((input) => typeof input === 'string' || 'tracks' in input);
  const files = filesOf(inputs);
  const outputs = await openOutputs(
    { ...options, ndjson: false, quarters: false, scale: false, brief: false, commonLevel: false },
    sides.map(outputKey),
    cwd,
    errors,
    [...listed.filter(isSheet), ...files, ...readBesides(sources, options)],
  );
  const reporter = fitReporter({
    json: options.json,
    units: options.units,
    paint: new Chalk({ level: colourLevel(surroundings) }),
    ...(surroundings.columns === null ? {} : { columns: surroundings.columns }),
    ascii: !takesUnicode(surroundings.environment),
    details: options.details,
    version: furrowVersion(),
  });
  const bytes = READS * (await totalBytes(files, cwd));
  const progress = new BigInt64Array(new SharedArrayBuffer(8));
  const bytesDone = () => Number(Atomics.load(progress, 0));
  const shown = showProgress({ names: inputs.map(nameOf), bytes, bytesDone }, errors, surroundings);
  // Loaded only now, so that wrong usage is told at once.
  const { fitAll } = await import('../fit-all.js');
  const found = new Set<Severity>();
  const failures: Failure[] = [];
  const run = {
    settings,
    jobs: options.jobs ?? surroundings.cores,
    bytes,
    requestFor: (input: SideInput) => requestFor(input, options),
    withForecasts: outputs.all.length > 0,
    progress,
  };
  try {
    for await (const result of fitAll(inputs, run)) {
      shown.fileDone();
      shown.hide();
      if ('fit' in result) {
        const { input, fit, file } = result;
        for (const severity of openSeverities(fit.findings)) found.add(severity);
        if (file !== null) {
          const told = { ...file, fit };
          await outputs.write(({ side }) => side(told, outputKey(input), input));
        }
        await output.write(reporter.side(fit));
      } else {
        failures.push(result);
        errors.error(safeText(result.message));
        if (result.stack !== undefined) errors.error(result.stack);
        for (const { failure } of outputs.all) failure(result);
        await output.write(reporter.failure(result));
      }
    }
    await outputs.write(({ end }) => end());
  } finally {
    shown.close();
  }
  await output.write(reporter.end());
  if (outputs.hasBug()) return BUG;
  return exitCodeOf(failures, outputs.unwritten(), found, options.failOn);
}

function requestFor(input: SideInput, { level, want, planner }: FitOptions): FitRequest {
  const levelDb = typeof input === 'string' ? (level ?? 0) : input.levelDb;
  return { levelDb, wantDb: want ?? levelDb, planner };
}

function filesOf(inputs: readonly (SideInput | Failure)[]): string[] {
  return inputs.flatMap((input) => {
    if (typeof input === 'string') return [input];
    if ('code' in input) return [];
    return [...new Set(input.tracks.map(({ file }) => file.path))];
  });
}

function nameOf(input: SideInput | Failure): string {
  if (typeof input !== 'string' && 'code' in input) return input.path;
  return outputKey(input).split(/[\\/]/).at(-1) ?? '';
}
