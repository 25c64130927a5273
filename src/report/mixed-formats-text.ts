import { basename } from 'node:path';
import {
  type FormatShare,
  type FormatSource,
  type MixedFormat,
  mixedFormats,
} from './mixed-formats.js';
import { safeText } from './safe-text.js';

/** Files of a share that are named. */
const NAMED = 2;

/**
 * Formats that differ within a folder, in one line: `formats differ in the folder masters: 96 kHz (11),
 * 44.1 kHz (b3.wav)`; of several such folders the first, and how many more.
 * @returns null where there is nothing to tell
 */
export function mixedFormatsText(sources: readonly FormatSource[]): string | null {
  const mixed = mixedFormats(sources);
  const [first] = mixed;
  if (first === undefined) return null;
  const ofFirst = mixed.filter(({ folder }) => folder === first.folder);
  const others = new Set(mixed.map(({ folder }) => folder)).size - 1;
  const more = others === 0 ? '' : `; and in ${others} more folder${others === 1 ? '' : 's'}`;
  return `${folderFormatsText(first.folder, ofFirst)}${more}`;
}

/** The same of one folder. */
export function folderFormatsText(folder: string, mixed: readonly MixedFormat[]): string {
  const aspects = mixed.map(aspectText);
  return `formats differ in the folder ${safeText(folder)}: ${aspects.join('; ')}`;
}

function aspectText({ shares }: MixedFormat): string {
  return shares.map((share, place) => shareText(share, place === 0)).join(', ');
}

/** The commonest is counted, what is out of line is named. */
function shareText({ value, paths }: FormatShare, isCommonest: boolean): string {
  if (isCommonest || paths.length > NAMED) return `${value} (${paths.length})`;
  return `${value} (${paths.map((path) => safeText(basename(path))).join(', ')})`;
}
