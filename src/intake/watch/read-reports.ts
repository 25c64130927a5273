import { opendir } from 'node:fs/promises';
import { join } from 'node:path';
import type { KnownFile, KnownFiles } from './known-files.js';
import { readReportHead } from './report-file.js';
import { REPORT_EXTENSION } from './report-places.js';
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
 * @param examinedWith what is in force now
 */
export async function readReports(
  out: string,
  examinedWith: string,
  known: KnownFiles,
): Promise<void> {
  const takeIn = async (places: readonly string[]) => {
    const heads = await Promise.all(
      places.map(async (place) => [place, await readReportHead(join(out, place))] as const),
    );
    for (const [place, head] of heads) {
      if (head !== null) known.set(knownFrom(head, place, examinedWith));
    }
  };
  const places: string[] = [];
  for await (const place of reportsIn(out, '')) {
    places.push(place);
    if (places.length === AT_A_TIME) await takeIn(places.splice(0));
  }
  await takeIn(places);
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

async function* reportsIn(out: string, folder: string): AsyncGenerator<string> {
  for await (const entry of await opendir(join(out, folder))) {
    const place = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.isDirectory()) yield* reportsIn(out, place);
    else if (entry.isFile() && entry.name.endsWith(REPORT_EXTENSION)) yield place;
  }
}
