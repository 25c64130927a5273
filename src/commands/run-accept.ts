import { join } from 'node:path';
import * as z from 'zod';
import { ACCEPTED_NAME } from '../accepted/accepted-name.js';
import { acceptedPlace } from '../accepted/accepted-place.js';
import { type Acceptance, entryOf } from '../accepted/entry-of.js';
import { findingsMeant, secondsOf } from '../accepted/findings-meant.js';
import { parseAccepted } from '../accepted/parse-accepted.js';
import { type AcceptedFile, readAccepted } from '../accepted/read-accepted.js';
import { withEntry } from '../accepted/with-entry.js';
import { hashAudio } from '../analysis/hash-audio.js';
import { InputError, UsageError } from '../errors.js';
import type { ForecastedFile } from '../forecast-result.js';
import { FINDING_IDS, type Finding } from '../model/forecast-types.js';
import { withSide } from '../open-side.js';
import { findingText } from '../report/finding-text.js';
import { safeText } from '../report/safe-text.js';
import { writeFileAtomic } from '../report/write-atomic.js';
import { PLANNERS } from '../settings.js';
import { chooseProfile } from './choose-profile.js';
import { cornerOption } from './corner-option.js';
import { DONE, UNREADABLE } from './exit-code.js';
import type { Run } from './run.js';
import { sideMeant } from './side-meant.js';
import { standardError } from './standard-error.js';

/** What the parser makes of the options of `accept`. */
const optionsSchema = z.strictObject({
  id: z.enum(FINDING_IDS),
  at: z.string().optional(),
  reason: z.string(),
  profile: z.string().optional(),
  discovery: z.boolean(),
  disc: z.number().optional(),
  rpm: z.number().optional(),
  side: z.string().optional(),
  level: z.number().optional(),
  pitch: z.string().optional(),
  width: z.string().optional(),
  elliptical: cornerOption,
  planner: z.enum(PLANNERS),
  quiet: z.boolean().default(false),
});

type AcceptOptions = z.infer<typeof optionsSchema>;

/** Forecasts a file, finds the finding that is meant, writes it down, and gives the exit code. */
export async function runAccept(path: string, given: unknown, run: Run): Promise<number> {
  const options = optionsSchema.parse(given);
  const { stderr, isErrorTerminal, cwd } = run.surroundings;
  const errors = standardError(stderr, { isQuiet: options.quiet, isTerminal: isErrorTerminal });
  const at = timeOf(options);
  if (options.reason.trim() === '') throw new UsageError('--reason: found nothing, expected words');
  const { settings, sources } = await chooseProfile(options, cwd, errors);
  const { folder } = acceptedPlace(path);
  const accepted = await readAccepted(folder);
  try {
    const input = await sideMeant(path, sources, cwd, options);
    if (typeof input !== 'string' && 'code' in input) {
      errors.error(safeText(input.message));
      return UNREADABLE;
    }
    const own = typeof input === 'string' ? settings : input.settings;
    const levelDb = typeof input === 'string' ? (options.level ?? 0) : input.levelDb;
    const { forecastFile } = await import('../forecast-side.js');
    const file = await forecastFile(input, own, { levelDb, planner: options.planner });
    const meant = theOnesMeant(file, options, at);
    const audioSha256 = await withSide(input, own, ({ source }) => hashAudio(source));
    const { side } = acceptedPlace(input);
    const written = await write(folder, accepted, meant, { ...options, side, audioSha256 });
    for (const finding of meant) errors.notice(`accepted in ${written}: ${told(finding, file)}`);
    return DONE;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    errors.error(safeText(error.message));
    return UNREADABLE;
  }
}

function timeOf({ at }: AcceptOptions): number | null {
  if (at === undefined) return null;
  const seconds = secondsOf(at);
  if (seconds !== null) return seconds;
  throw new UsageError(`--at: found "${at}", expected a time, such as 02:14.3 or 134.3`);
}

/** One finding; with a time, all of its id that are there: they are one place. */
function theOnesMeant(file: ForecastedFile, { id }: AcceptOptions, at: number | null): Finding[] {
  const { findings } = file.forecast;
  const ofId = findingsMeant(findings, id, null);
  const meant = findingsMeant(findings, id, at);
  if (meant.length === 1 || (at !== null && meant.length > 0)) return meant;
  const list = (some: readonly Finding[]) => some.map((one) => `\n  ${told(one, file)}`).join('');
  const name = safeText(file.name);
  if (ofId.length === 0) {
    const ids = [...new Set(findings.map((finding) => finding.id))].join(', ');
    const there = ids === '' ? 'nothing is found in it' : `found are ${ids}`;
    throw new UsageError(`--id: ${name} has no finding ${id} at this level and profile; ${there}`);
  }
  const problem =
    at === null
      ? `--id: ${name} has ${ofId.length} findings ${id}; say with --at which one is meant:`
      : `--at: ${name} has no finding ${id} there, but these:`;
  throw new UsageError(`${problem}${list(ofId)}`);
}

async function write(
  folder: string,
  accepted: AcceptedFile | null,
  findings: readonly Finding[],
  { side, reason, audioSha256 }: Acceptance,
): Promise<string> {
  const path = accepted?.path ?? join(folder, ACCEPTED_NAME);
  let next = accepted;
  for (const finding of findings) {
    const entry = entryOf(finding, { side, reason: reason.trim(), audioSha256 });
    const text = withEntry(next, entry);
    next = { path, text, entries: parseAccepted(path, text) };
  }
  if (next !== null) await writeFileAtomic(path, next.text);
  return safeText(path);
}

function told(finding: Finding, { settings }: ForecastedFile): string {
  const { message } = findingText(finding, { settings, units: 'metric' });
  return `${finding.severity}: ${message}`;
}
