import { resolve } from 'node:path';
import { Chalk } from 'chalk';
import { findInputs } from '../analysis/find-inputs.js';
import { UsageError } from '../errors.js';
import { readRules } from '../intake/read-rules.js';
import { NO_RULES, type Rules } from '../intake/rules.js';
import { colourLevel } from '../report/colour.js';
import { tabbedLayout, terminalLayout } from '../report/intake-layout.js';
import {
  type IntakeReporter,
  intakeJsonReporter,
  intakeNdjsonReporter,
  intakeTextReporter,
} from '../report/intake-reporter.js';
import { takesUnicode } from '../report/takes-unicode.js';
import { furrowVersion } from '../version.js';
import { chooseProfile, readBesides } from './choose-profile.js';
import { type IntakeOptions, intakeOptions } from './intake-options.js';
import { openJunit } from './junit-output.js';
import { listPaths } from './list-paths.js';
import type { Run } from './run.js';
import { filesOf, runInputs } from './run-inputs.js';
import { standardError } from './standard-error.js';
import { outlasting } from './standard-output.js';
import type { Surroundings } from './surroundings.js';
import { tellIntake } from './tell-intake.js';
import { watchOptions } from './watch-options.js';

/** Judges every file that arrived, tells each as it is done, and gives the exit code. */
export async function runIntake(
  paths: readonly string[],
  given: unknown,
  { surroundings, output }: Pick<Run, 'surroundings' | 'output'>,
): Promise<number> {
  const options = intakeOptions(given);
  const watch = watchOptions(options, paths);
  const { stderr, isErrorTerminal, cwd } = surroundings;
  const errors = standardError(stderr, { isQuiet: options.quiet, isTerminal: isErrorTerminal });
  const { settings, sources } = await chooseProfile(options, cwd, errors);
  const rules = await rulesOf(options, cwd);
  if (watch !== null) {
    const { runWatch } = await import('./run-watch.js');
    return await runWatch(watch, { options, settings, rules, errors }, { surroundings, output });
  }
  const listed = await listPaths(paths, options.filesFrom, surroundings);
  const found = await findInputs(listed, { cwd, follow: options.follow });
  const inputs = runInputs(found, options.allowEmpty);
  const failOn = options.failOn === 'never' ? null : options.failOn;
  const read = [...filesOf(inputs), ...readBesides(sources, options)];
  const run = {
    inputs,
    settings,
    rules,
    request: { levelDb: options.level, planner: options.planner },
    jobs: options.jobs,
    failOn,
    junit: await openJunit(options.junit, { level: failOn, units: options.units, read, cwd }),
    reporter: reporterFor(
      options,
      inputs.map((input) => (typeof input === 'string' ? input : input.path)),
      surroundings,
    ),
    errors,
  };
  const told = options.junit === undefined ? output : outlasting(output);
  return await tellIntake(run, { surroundings, output: told });
}

async function rulesOf({ rules }: IntakeOptions, cwd: string): Promise<Rules> {
  if (rules === undefined) return NO_RULES;
  if (rules === '') throw new UsageError('--rules: found nothing, expected a file');
  return await readRules(resolve(cwd, rules), rules);
}

function reporterFor(
  { json, ndjson, units, details }: IntakeOptions,
  paths: readonly string[],
  surroundings: Surroundings,
): IntakeReporter {
  if (json) return intakeJsonReporter(furrowVersion());
  if (ndjson) return intakeNdjsonReporter(furrowVersion());
  const { columns, environment } = surroundings;
  if (!surroundings.isTerminal) {
    return intakeTextReporter({ layout: tabbedLayout(paths), units, details });
  }
  const width = columns ?? 80;
  const layout = terminalLayout(paths, {
    columns: width,
    ascii: !takesUnicode(environment),
    paint: new Chalk({ level: colourLevel(surroundings) }),
    units,
  });
  return intakeTextReporter({ layout, units, details, columns: width });
}
