import type { Dir } from 'node:fs';
import { opendir } from 'node:fs/promises';
import { join } from 'node:path';
import { accessError } from '../../analysis/wav-access-error.js';
import type { KnownFile, KnownFiles } from './known-files.js';
import { readReportHead } from './report-file.js';
import { isPlaceOf, REPORT_EXTENSION } from './report-places.js';
import type { WatchedHead } from './watched-schema.js';

/** Reports that are read at a time: one by one most of the time is waiting. */
const AT_A_TIME = 32;

/** Failures that may pass although the file stays as it is. */
const PASSING = new Set<string>([
  'not-found',
  'bad-name',
  'no-permission',
  'read-failed',
  'changed-while-read',
  'crashed',
  'link-outside',
  'link-loop',
]);

/**
 * Takes in what the reports of earlier runs say: they are the memory of the watch.
 * A report that does not lie where it would be written, such as a copy, is passed by.
 * @param examinedWith what is in force now
 * @returns what is wrong with folders that cannot be read
 */
export async function readReports(
  out: string,
  examinedWith: string,
  known: KnownFiles,
): Promise<string[]> {
  const takeIn = async (places: readonly string[]) => {
    const heads = await Promise.all(
      places.map(async (place) => [place, await readReportHead(join(out, place))] as const),
    );
    for (const [place, head] of heads) {
      if (head === null || !isPlaceOf(place, head.file.path)) continue;
      known.set(knownFrom(head, place, examinedWith));
    }
  };
  const places: string[] = [];
  const closed: string[] = [];
  for await (const place of reportsIn(out, '', closed)) {
    places.push(place);
    if (places.length === AT_A_TIME) await takeIn(places.splice(0));
  }
  await takeIn(places);
  return closed;
}

/** What is known of a file by its report. */
export function knownFrom(head: WatchedHead, place: string, examinedWith: string): KnownFile {
  const { path, bytes, modifiedNs, sha256 } = head.file;
  return {
    path,
    place,
    look: { bytes, modifiedNs },
    sha256,
    outcome: outcomeOf(head.failure?.code),
    isCurrent: head.examinedWith === examinedWith,
    isOfThisRun: false,
    isThere: null,
  };
}

function outcomeOf(code: string | undefined): KnownFile['outcome'] {
  if (code === undefined) return 'result';
  return PASSING.has(code) ? 'passing-failure' : 'failure';
}

async function* reportsIn(out: string, folder: string, closed: string[]): AsyncGenerator<string> {
  let entries: Dir;
  try {
    entries = await opendir(join(out, folder));
  } catch (cause) {
    closed.push(accessError(`--out: ${folder === '' ? '.' : folder}`, cause).message);
    return;
  }
  for await (const entry of entries) {
    const place = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.isDirectory()) yield* reportsIn(out, place, closed);
    else if (entry.isFile() && entry.name.endsWith(REPORT_EXTENSION)) yield place;
  }
}
