import { join } from 'node:path';
import { OutputError } from '../../errors.js';
import type { Judged } from './judge-content.js';
import type { KnownFile, KnownFiles } from './known-files.js';
import { isSameLook, type Look, type Seen } from './look.js';
import { knownFrom } from './read-reports.js';
import { writeReport } from './report-file.js';
import type { WatchEvent } from './watch-event.js';
import type { WatchSetup } from './watch-setup.js';
import { WATCHED_FORMAT, type WatchedDocument } from './watched-schema.js';

/** What became of a file whose turn it was. */
export type Examined =
  /** It has a report now. */
  | { readonly kind: 'done'; readonly file: KnownFile; readonly event: WatchEvent }
  /** It is not as it was when it was seen last: it has to wait anew. */
  | { readonly kind: 'changed'; readonly look: Look }
  | { readonly kind: 'gone' }
  | { readonly kind: 'unwritten'; readonly event: WatchEvent };

/**
 * Examines a file that has not changed for long enough, and writes its report. A report is of the
 * bytes that its look stands for: a file that changes while it is examined gets none.
 * @param path in the folder, with /
 * @param waited as it was when it was seen last
 */
export async function examineFile(
  path: string,
  waited: Look,
  setup: WatchSetup,
  {
    known,
    look,
    judge,
  }: {
    readonly known: KnownFiles;
    readonly look: (path: string) => Promise<Seen>;
    readonly judge: (path: string) => Promise<Judged>;
  },
): Promise<Examined> {
  const seen = await look(path);
  const changed = changeOf(seen, waited);
  if (changed !== null) return changed;
  const judged = seen.kind === 'refused' ? refused(seen.error) : await judge(path);
  return changeOf(await look(path), waited) ?? (await tell(path, waited, judged, setup, known));
}

function changeOf(seen: Seen, waited: Look): Examined | null {
  if (seen.kind === 'gone' || seen.kind === 'folder') return { kind: 'gone' };
  return isSameLook(seen.look, waited) ? null : { kind: 'changed', look: seen.look };
}

function refused({ path, code, message }: Extract<Seen, { kind: 'refused' }>['error']): Judged {
  return { sha256: null, said: { path, code, message }, from: null };
}

async function tell(
  path: string,
  look: Look,
  judged: Judged,
  setup: WatchSetup,
  known: KnownFiles,
): Promise<Examined> {
  const output = known.placeOf(path);
  const report = reportOf(path, look, judged, setup);
  try {
    await writeReport(join(setup.out, output), report);
  } catch (error) {
    if (!(error instanceof OutputError)) throw error;
    return {
      kind: 'unwritten',
      event: { type: 'unwritten', path, output, message: error.message },
    };
  }
  const file = knownFrom(report, output, setup.examinedWith);
  return {
    kind: 'done',
    file: { ...file, isOfThisRun: true, isThere: true },
    event: eventOf(path, output, judged),
  };
}

function reportOf(
  path: string,
  { bytes, modifiedNs }: Look,
  { sha256, said }: Judged,
  { version, examinedWith }: WatchSetup,
): WatchedDocument {
  const isFailure = 'code' in said;
  return {
    format: WATCHED_FORMAT,
    furrow: version,
    file: { path, bytes, modifiedNs, sha256 },
    examinedWith,
    result: isFailure ? null : said,
    failure: isFailure ? { path: said.path, code: said.code, message: said.message } : null,
  };
}

function eventOf(path: string, output: string, { said, from }: Judged): WatchEvent {
  if ('code' in said) {
    return { type: 'failed', path, output, code: said.code, message: said.message };
  }
  const { verdict, worst } = said;
  if (from !== null) return { type: 'same-content', path, output, verdict, from };
  return { type: 'examined', path, output, verdict, worst: worst?.id ?? null };
}
