import { join } from 'node:path';
import { UsageError } from '../errors.js';
import { readText } from '../profile/read-text.js';
import { ACCEPTED_NAME, LARGEST_ACCEPTED } from './accepted-name.js';
import type { AcceptedEntry } from './accepted-schema.js';

/** A folder's accepted findings. */
export interface AcceptedFile {
  /** As it is to be shown. */
  readonly path: string;
  /** As it stands, comments and all. */
  readonly text: string;
  readonly entries: readonly AcceptedEntry[];
}

/**
 * The accepted findings beside the files of a folder; null if the folder has none.
 * @param shownFolder the folder as it is to be shown
 * @throws UsageError where the file cannot be read or is wrong, with path and place in it
 */
export async function readAccepted(
  folder: string,
  shownFolder = folder,
): Promise<AcceptedFile | null> {
  const path = join(shownFolder, ACCEPTED_NAME);
  let text: string;
  try {
    text = await readText(join(folder, ACCEPTED_NAME), LARGEST_ACCEPTED);
  } catch (cause) {
    if (!(cause instanceof Error)) throw cause;
    if ('code' in cause && cause.code === 'ENOENT') return null;
    const reason = cause.message.split(',')[0];
    throw new UsageError(`${path}: cannot be read as accepted findings: ${reason}`, { cause });
  }
  // Few folders have one, and its schema takes 2 ms to make.
  const { parseAccepted } = await import('./parse-accepted.js');
  return { path, text, entries: parseAccepted(path, text) };
}

/** The entries that speak of a file of the folder. */
export function entriesFor(accepted: AcceptedFile | null, side: string): AcceptedEntry[] {
  return accepted === null ? [] : accepted.entries.filter((entry) => entry.side === side);
}

/** The entries that were written for a sound, whatever its file was called; none if it is unknown. */
export function entriesOfSound(
  accepted: AcceptedFile | null,
  audioSha256: string | null,
): AcceptedEntry[] {
  if (accepted === null || audioSha256 === null) return [];
  return accepted.entries.filter((entry) => entry.audioSha256 === audioSha256);
}
