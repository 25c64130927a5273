import type { Request } from '../forecast-side.js';
import type { IntakeResult } from '../intake/intake-result.js';
import type { Rules } from '../intake/rules.js';
import type { Severity } from '../model/forecast-types.js';
import type { Failure } from '../report/failure.js';
import type { IntakeReporter } from '../report/intake-reporter.js';
import { intakeSummary } from '../report/intake-summary.js';
import { folderFormatsText } from '../report/mixed-formats-text.js';
import { notJudgedTexts } from '../report/not-judged-text.js';
import { safeText } from '../report/safe-text.js';
import type { Settings } from '../settings.js';
import { exitCodeOf } from './exit-code.js';
import { intakeTally } from './intake-tally.js';
import type { JunitOutput } from './junit-output.js';
import { poolFor } from './pool-for.js';
import { showProgress } from './progress.js';
import type { Run } from './run.js';
import { filesOf, type RunInput, totalBytes } from './run-inputs.js';
import type { StandardError } from './standard-error.js';
import { NO_VECTORS } from './tell-forecasts.js';

/** Files to judge, and where to tell of them. */
export interface IntakeCommand {
  readonly inputs: readonly RunInput[];
  readonly settings: Settings;
  readonly rules: Rules;
  readonly request: Request;
  readonly jobs: number | undefined;
  /** Null: no finding changes the exit code. */
  readonly failOn: Severity | null;
  readonly junit: JunitOutput;
  readonly reporter: IntakeReporter;
  readonly errors: StandardError;
}

/** Judges every input, tells each as it is done, and gives the exit code. */
export async function tellIntake(
  { inputs, settings, rules, request, jobs, failOn, junit, reporter, errors }: IntakeCommand,
  { surroundings, output }: Pick<Run, 'surroundings' | 'output'>,
): Promise<number> {
  const bytes = await totalBytes(filesOf(inputs), surroundings.cwd);
  const pool = await poolFor(jobs ?? surroundings.cores, bytes);
  // Loaded only now, so that wrong usage is told at once.
  const { intakeAll, kernelIsAvailable } = await import('../intake/intake-all.js');
  if (!(await kernelIsAvailable())) errors.notice(NO_VECTORS);
  const progress = new BigInt64Array(new SharedArrayBuffer(8));
  const bytesDone = () => Number(Atomics.load(progress, 0));
  const shown = showProgress({ names: inputs.map(nameOf), bytes, bytesDone }, errors, surroundings);
  const tally = intakeTally(rules);
  try {
    await output.write(reporter.start());
    const run = { pool, settings, rules, request, progress };
    for await (const result of intakeAll(inputs, run)) {
      tally.take(result);
      junit.take(result);
      shown.fileDone();
      shown.hide();
      notify(result, errors);
      const text = 'code' in result ? reporter.failure(result) : reporter.file(result);
      await output.write(text);
    }
  } finally {
    shown.close();
    await pool.close();
  }
  for (const folder of tally.folders()) {
    junit.folder(folder);
    errors.notice(folderFormatsText(folder.folder, folder.mixed));
    await output.write(reporter.folder(folder));
  }
  await output.write(reporter.end(tally.counts()));
  const isWritten = await junit.end(errors);
  errors.notice(intakeSummary(tally.counts()));
  return exitCodeOf(tally.failures, isWritten ? 0 : 1, tally.severities, failOn ?? undefined);
}

/** What stderr is told of a file: why it failed, or what could not be judged. */
function notify(result: IntakeResult | Failure, errors: StandardError): void {
  if ('code' in result) {
    // A name may hold a line break; a failure is one line.
    errors.error(safeText(result.message));
    if (result.stack !== undefined) errors.error(result.stack);
    return;
  }
  for (const text of notJudgedTexts(result)) errors.notice(`${safeText(result.path)}: ${text}`);
}

function nameOf(input: RunInput): string {
  const path = typeof input === 'string' ? input : input.path;
  return path.split('/').at(-1) ?? path;
}
