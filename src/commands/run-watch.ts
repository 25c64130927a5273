import { createHash } from 'node:crypto';
import { stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { accessError } from '../analysis/wav-access-error.js';
import { UsageError } from '../errors.js';
import type { Rules } from '../intake/rules.js';
import type { WatchEvent } from '../intake/watch/watch-event.js';
import { checkOutputFolder } from '../report/check-output.js';
import type { Failure } from '../report/failure.js';
import { intakeToJson } from '../report/intake-json.js';
import { jsonText } from '../report/json-text.js';
import { safeText } from '../report/safe-text.js';
import type { Settings } from '../settings.js';
import { threadPool } from '../side-pool.js';
import { furrowVersion } from '../version.js';
import { BUG, DONE, NOT_WRITTEN } from './exit-code.js';
import type { IntakeOptions } from './intake-options.js';
import type { Run } from './run.js';
import type { StandardError } from './standard-error.js';
import { NO_VECTORS } from './tell-forecasts.js';
import type { WatchOptions } from './watch-options.js';

/** How often everything is looked at, in settle times; and between which bounds, ms. */
const LOOK_AGAIN = 6;
const LEAST_LOOK_AGAIN = 1000;
const MOST_LOOK_AGAIN = 60_000;

interface Wanted {
  readonly options: IntakeOptions;
  readonly settings: Settings;
  readonly rules: Rules;
  readonly errors: StandardError;
}

/** Watches a folder until a signal asks it to end, and gives the exit code. */
export async function runWatch(
  { folder, out, settleSeconds }: WatchOptions,
  { options, settings, rules, errors }: Wanted,
  { surroundings, output }: Pick<Run, 'surroundings' | 'output'>,
): Promise<number> {
  const { cwd, now } = surroundings;
  const [watched, reports] = [resolve(cwd, folder), out === '' ? '' : resolve(cwd, out)];
  await checkFolder(watched, folder);
  await checkOutputFolder(reports, { option: '--out' });
  const request = { levelDb: options.level, planner: options.planner };
  const version = furrowVersion();
  const end = new AbortController();
  surroundings.askedToEnd(() => end.abort());

  const [{ intakeAll, kernelIsAvailable }, { watchFolder }, { WATCH_FORMAT }] = await Promise.all([
    import('../intake/intake-all.js'),
    import('../intake/watch/watch-folder.js'),
    import('../intake/watch/watch-event.js'),
  ]);
  if (!(await kernelIsAvailable())) errors.notice(NO_VECTORS);
  // Threads also where there is one job: a file that ends its thread does not end the watch.
  const pool = await threadPool(options.jobs ?? surroundings.cores);
  const run = { pool, settings, rules, request, progress: new BigInt64Array(1) };
  let hasBug = false;
  const examine = async (path: string) => {
    for await (const result of intakeAll([path], run)) {
      if (!('code' in result)) return intakeToJson(result);
      tellStack(result, errors);
      return result;
    }
    throw new Error('a file without a result');
  };
  const began = now();
  const tell = async (told: WatchEvent) => {
    if (told.type === 'failed' && told.code === 'crashed') hasBug = true;
    const { type, ...event } = told;
    const elapsedSeconds = Math.round(now() - began) / 1000;
    await output.write(`${jsonText({ format: WATCH_FORMAT, type, elapsedSeconds, ...event })}\n`);
  };
  const settle = 1000 * settleSeconds;
  try {
    const { unwritten } = await watchFolder(
      {
        folder: watched,
        out: reports,
        follow: options.follow,
        settle,
        lookAgain: Math.min(Math.max(LOOK_AGAIN * settle, LEAST_LOOK_AGAIN), MOST_LOOK_AGAIN),
        jobs: pool.jobs,
        version,
        examinedWith: digestOf({ version, settings, rules, request }),
        examine,
        isNamedAlike: (one, other) =>
          [one, other].every((path) => rules.name?.matches(basename(path)) ?? true),
        tell,
        now,
      },
      end.signal,
    );
    if (hasBug) return BUG;
    return unwritten > 0 ? NOT_WRITTEN : DONE;
  } finally {
    await pool.close();
  }
}

async function checkFolder(path: string, shown: string): Promise<void> {
  const facts = await stat(path).catch((cause: unknown) => {
    throw new UsageError(`--watch: ${accessError(shown, cause).message}`, { cause });
  });
  if (!facts.isDirectory()) throw new UsageError(`--watch: ${shown}: it is no folder`);
}

/** SHA-256 of all that a report depends on besides its file, 64 hexadecimal digits. */
function digestOf(inForce: unknown): string {
  return createHash('sha256').update(JSON.stringify(inForce)).digest('hex');
}

function tellStack({ stack, message }: Failure, errors: StandardError): void {
  if (stack === undefined) return;
  errors.error(safeText(message));
  errors.error(stack);
}
