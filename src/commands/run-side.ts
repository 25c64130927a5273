import { resolve } from 'node:path';
import { UsageError } from '../errors.js';
import { type ProfileSources, resolveProfile } from '../profile/resolve-profile.js';
import type { ProgramSide } from '../program/program-side.js';
import type { Failure } from '../report/failure.js';
import { profileNotice, profileSources, readBesides } from './choose-profile.js';
import { houseAcceptances } from './house-acceptances.js';
import { openOutputs } from './outputs.js';
import type { Run } from './run.js';
import { reporterFor } from './run-forecast.js';
import { runFromCues } from './run-from-cues.js';
import { sheetInputs } from './sheet-inputs.js';
import { sheetSides } from './sheet-sides.js';
import { type SideOptions, sideOptions } from './side-options.js';
import { standardError } from './standard-error.js';
import { outputKey, tellForecasts } from './tell-forecasts.js';

/** Forecasts the sides of every sheet, tells each as it is done, and gives the exit code. */
export async function runSide(
  sheets: readonly string[],
  given: unknown,
  run: Run,
): Promise<number> {
  const options = sideOptions(given);
  if (options.fromCues !== undefined) return await runFromCues(sheets, options.fromCues, run);
  const { stderr, isErrorTerminal, cwd } = run.surroundings;
  const errors = standardError(stderr, { isQuiet: options.quiet, isTerminal: isErrorTerminal });
  if (sheets.length === 0) throw new UsageError('nothing to forecast: give a side sheet');
  const sources = await profileSources(options, cwd);
  const { inputs, counts } = await layOut(eachOnce(sheets, cwd), options, sources, cwd);
  errors.notice(profileNotice(sources));
  const sides = inputs.filter((input) => 'tracks' in input);
  const files = [...new Set(sides.flatMap(({ tracks }) => tracks.map(({ file }) => file.path)))];
  const outputs = await openOutputs(options, sides.map(outputKey), cwd, errors, [
    ...sheets,
    ...files,
    ...readBesides(sources, {}),
  ]);
  const acceptances = await houseAcceptances(sides, cwd, errors);
  const withSheet = sheetSides(counts);
  return await tellForecasts(
    {
      inputs,
      files,
      // No input is a file.
      settings: sides[0]?.settings ?? resolveProfile(),
      requestFor: (input) => ({
        levelDb: typeof input === 'string' ? 0 : input.levelDb,
        planner: options.planner,
        order: options.order,
        keepMotion: options.html !== undefined,
        hashAudio: acceptances.concerns(input),
      }),
      told: (file, input) => withSheet(acceptances.apply(input, file), input),
      outputs,
      reporter: await reporterFor(options, inputs.length, run.surroundings),
      errors,
      jobs: options.jobs,
      failOn: options.failOn,
    },
    run,
  );
}

function eachOnce(sheets: readonly string[], cwd: string): string[] {
  return [...new Map(sheets.map((sheet) => [resolve(cwd, sheet), sheet])).values()];
}

/** What the sheets come to. */
interface LaidOutSheets {
  /** The sides in their order; in place of one, the files that it cannot be made of. */
  readonly inputs: readonly (ProgramSide | Failure)[];
  /** How many sides each sheet has. */
  readonly counts: ReadonlyMap<string, number>;
}

async function layOut(
  sheets: readonly string[],
  { level }: SideOptions,
  sources: ProfileSources,
  cwd: string,
): Promise<LaidOutSheets> {
  const counts = new Map<string, number>();
  const inputs: (ProgramSide | Failure)[] = [];
  for (const path of sheets) {
    const sheet = await sheetInputs(path, sources, cwd, { level, lost: 'forecast' });
    counts.set(sheet.path, sheet.sideCount);
    inputs.push(...sheet.inputs);
  }
  return { inputs, counts };
}
