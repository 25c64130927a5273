import { Buffer } from 'node:buffer';

/** With a suffix such as `.quarters.csv` a name stays within the 255 bytes of a file system. */
const MOST_BYTES = 200;
/** Controls, what turns the reading direction, line separators, halves of a surrogate. */
const UNSAFE = /[\p{Cc}\p{Bidi_Control}\p{Cs}\u2028\u2029/\\<>:"|?*]/gu;
const EXTENSION = /(?<=[^\\/])\.[^.\\/]*$/u;
/** Names that stand for devices on some systems, whatever follows a point. */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(?=$|\.)/i;

/**
 * A file name without extension for the output of each input path, in their order. They are the
 * names of the files where those differ; files that differ in their extension only keep it; files of
 * one name have their folders in front, as many as it takes, and where that does not help a number
 * behind. No two are the same, also where a file
 * system sees no case and no difference between composed and decomposed letters. At most 200 bytes;
 * never hidden, never like an option, no path separators, no control characters.
 */
export function outputNames(paths: readonly string[]): string[] {
  const bareKey = (path: string) => keyOf(path.replace(EXTENSION, ''));
  const bare = countsOf(paths.map(bareKey));
  const whole = countsOf(paths.map(keyOf));
  const isTold = (path: string) => bare.get(bareKey(path)) !== 1 && whole.get(keyOf(path)) === 1;
  return numbered(withFolders(paths.map((path) => partsOf(path, !isTold(path)))));
}

/** Folders, outermost first, and last the name. */
function partsOf(path: string, isBare: boolean): string[] {
  const parts = path.split(/[\\/]/).filter((part) => !['', '.', '..'].includes(part));
  const name = parts.pop() ?? '';
  return [...parts, isBare ? name.replace(EXTENSION, '') : name];
}

/** Names that clash get one folder more, all of them, until they differ or there are no more. */
function withFolders(files: readonly (readonly string[])[]): string[] {
  const used = files.map(() => 1);
  for (;;) {
    const names = files.map((parts, file) => safeName(parts.slice(-(used[file] ?? 1)).join('_')));
    const counts = countsOf(names.map(keyOf));
    let isSame = true;
    for (const [file, name] of names.entries()) {
      const depth = used[file] ?? 1;
      if (counts.get(keyOf(name)) === 1 || depth >= (files[file]?.length ?? 0)) continue;
      used[file] = depth + 1;
      isSame = false;
    }
    if (isSame) return names;
  }
}

/** The first of equal names keeps it, unless it is another's; the others are counted from 2. */
function numbered(names: readonly string[]): string[] {
  const counts = countsOf(names.map(keyOf));
  const taken = new Set([...counts].filter(([, count]) => count === 1).map(([key]) => key));
  const next = new Map<string, number>();
  return names.map((name) => {
    const key = keyOf(name);
    if (counts.get(key) === 1) return name;
    for (let number = next.get(key) ?? 1; ; number++) {
      const candidate = number === 1 ? name : withNumber(name, number);
      if (taken.has(keyOf(candidate))) continue;
      taken.add(keyOf(candidate));
      next.set(key, number + 1);
      return candidate;
    }
  });
}

function withNumber(name: string, number: number): string {
  return `${cut(name, MOST_BYTES - `-${number}`.length)}-${number}`;
}

/** A name as it can stand in any file system; see outputNames. */
export function safeName(text: string): string {
  const clean = text
    .normalize('NFC')
    .replace(UNSAFE, '_')
    // A point makes it hidden, a hyphen an option, a tilde a home folder.
    .replace(/^[.\-~\s]+/u, '_')
    .replace(DEVICE, '$1_');
  // Points and spaces at the end are dropped by some systems.
  const name = cut(clean, MOST_BYTES).replace(/[.\s]+$/u, '');
  return name === '' ? '_' : name;
}

/** As many whole characters from the start as there is room for. */
function cut(text: string, bytes: number): string {
  let room = bytes;
  let kept = '';
  for (const character of text) {
    room -= Buffer.byteLength(character);
    if (room < 0) break;
    kept += character;
  }
  return kept;
}

/** What file systems that see no case take for the same. */
export function keyOf(name: string): string {
  return name.normalize('NFKD').toUpperCase().toLowerCase();
}

function countsOf(keys: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}
