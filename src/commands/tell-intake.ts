import type { SourceFile } from '../forecast-result.js';
import type { Request } from '../forecast-side.js';
import type { IntakeResult } from '../intake/intake-result.js';
import { mixedFolders } from '../intake/mixed-folders.js';
import type { Rules } from '../intake/rules.js';
import type { Severity } from '../model/forecast-types.js';
import type { Failure } from '../report/failure.js';
import { counted, NO_FILES } from '../report/intake-document.js';
import type { IntakeReporter } from '../report/intake-reporter.js';
import { intakeSummary } from '../report/intake-summary.js';
import { folderFormatsText } from '../report/mixed-formats-text.js';
import { safeText } from '../report/safe-text.js';
import type { Settings } from '../settings.js';
import { exitCodeOf } from './exit-code.js';
import type { JunitOutput } from './junit-output.js';
import { poolFor } from './pool-for.js';
import { showProgress } from './progress.js';
import type { Run } from './run.js';
import { filesOf, type RunInput, totalBytes } from './run-inputs.js';
import type { StandardError } from './standard-error.js';

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
  const { intakeAll } = await import('../intake/intake-all.js');
  const progress = new BigInt64Array(new SharedArrayBuffer(8));
  const bytesDone = () => Number(Atomics.load(progress, 0));
  const shown = showProgress({ names: inputs.map(nameOf), bytes, bytesDone }, errors, surroundings);
  const found = new Set<Severity>();
  const failures: Failure[] = [];
  const sources: SourceFile[] = [];
  let counts = NO_FILES;
  const tell = async (result: IntakeResult | Failure) => {
    counts = counted(counts, result);
    junit.take(result);
    shown.fileDone();
    shown.hide();
    if ('code' in result) {
      failures.push(result);
      tellFailure(result, errors);
      await output.write(reporter.failure(result));
    } else {
      if (result.source !== null) sources.push(result.source);
      for (const rule of result.notJudged) errors.notice(notJudgedText(result.path, rule));
      for (const { severity } of result.findings) found.add(severity);
      await output.write(reporter.file(result));
    }
  };
  try {
    await output.write(reporter.start());
    const run = { pool, settings, rules, request, progress };
    for await (const result of intakeAll(inputs, run)) await tell(result);
  } finally {
    shown.close();
    await pool.close();
  }
  for (const folder of mixedFolders(sources, rules)) {
    found.add(folder.severity);
    junit.folder(folder);
    errors.notice(folderFormatsText(folder.folder, folder.mixed));
    await output.write(reporter.folder(folder));
  }
  await output.write(reporter.end(counts));
  const isWritten = await junit.end(errors);
  errors.notice(intakeSummary(counts));
  return exitCodeOf(failures, isWritten ? 0 : 1, found, failOn ?? undefined);
}

function nameOf(input: RunInput): string {
  const path = typeof input === 'string' ? input : input.path;
  return path.split('/').at(-1) ?? path;
}

function notJudgedText(path: string, rule: string): string {
  return `${safeText(path)}: ${rule} is not judged: only the sound tells, and this is saved motion`;
}

function tellFailure({ message, stack }: Failure, errors: StandardError): void {
  // A name may hold a line break; a failure is one line.
  errors.error(safeText(message));
  if (stack !== undefined) errors.error(stack);
}
