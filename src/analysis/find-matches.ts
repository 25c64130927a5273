import { Stats } from 'node:fs';
import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import fastGlob from 'fast-glob';
import { UsageError } from '../errors.js';
import type { FoundInput } from './found-input.js';
import { byNaturalOrder } from './natural-order.js';
import { oneEachSide } from './side-names.js';
import { type TreeLinks, treeLinks } from './tree-links.js';
import { accessError, systemNameOf } from './wav-access-error.js';

/** What the walk takes for a link that leads nowhere. */
const GONE = { code: 'ENOENT' };
const NO_STATS = new Stats();
type StatDone = (error: NodeJS.ErrnoException | null, stats: Stats) => void;

/**
 * The files that a pattern matches, in natural order; upper and lower case are alike, hidden files
 * are left out, folders never match. Links are taken as far as `treeLinks` allows, in the tree under
 * the part of the pattern that is no pattern. Of a side that is matched as sound and as a saved
 * motion, only the sound is taken.
 * A pattern that matches nothing, or cannot be one, is a UsageError.
 * @param follow whether links out of that tree are followed
 */
export async function findMatches(
  pattern: string,
  cwd: string,
  follow = false,
): Promise<FoundInput[]> {
  const links = await treeLinks(resolve(cwd, fixedPart(pattern)), follow);
  let entries: fastGlob.Entry[];
  try {
    entries = await matches(pattern, cwd, links, follow);
  } catch (cause) {
    if (systemNameOf(cause) === undefined) throw unreadable(pattern, cause);
    return [{ kind: 'failure', error: accessError(pattern, cause) }];
  }
  const found = await withoutFolders(entries, cwd, links);
  if (found.length === 0) {
    const message = `${pattern}: no such file is there, and as a pattern it matches none`;
    throw new UsageError(`${message}; check the spelling and the folder`);
  }
  const sides = new Set(oneEachSide(found.map(pathOf)));
  return found
    .filter((input) => sides.has(pathOf(input)))
    .sort((a, b) => byNaturalOrder(pathOf(a), pathOf(b)));
}

/** Whether a path reads as a pattern. */
export function isPattern(path: string): boolean {
  return fastGlob.isDynamicPattern(path);
}

/** The folders at the beginning of a pattern that are named, not matched. */
function fixedPart(pattern: string): string {
  const parts = pattern.split('/');
  const first = parts.findIndex((part) => fastGlob.isDynamicPattern(part));
  const fixed = parts.slice(0, first === -1 ? parts.length - 1 : first).join('/');
  return fixed === '' && pattern.startsWith('/') ? '/' : fixed;
}

async function matches(
  pattern: string,
  cwd: string,
  links: TreeLinks,
  follow: boolean,
): Promise<fastGlob.Entry[]> {
  // Asked one after the other: of two links to one folder it is always the same that is entered.
  let asked: Promise<void> = Promise.resolve();
  const statOf = (path: string, done: StatDone) => {
    asked = asked.then(() => answer(path, done));
  };
  // The walk itself would go round a loop of links until the system stops it.
  const answer = async (path: string, done: StatDone) => {
    try {
      const stats = await stat(path);
      const enters = !stats.isDirectory() || (await links.judge(path, path)).kind === 'folder';
      done(enters ? null : Object.assign(new Error('entered by another way'), GONE), stats);
    } catch (error) {
      done(Object.assign(new Error('leads nowhere', { cause: error }), GONE), NO_STATS);
    }
  };
  // onlyFiles would leave out links to files when links to folders are not followed.
  return await fastGlob.glob(pattern, {
    cwd,
    caseSensitiveMatch: false,
    followSymbolicLinks: follow,
    onlyFiles: false,
    objectMode: true,
    ...(follow ? { concurrency: 1, fs: { stat: statOf } } : {}),
  });
}

async function withoutFolders(
  entries: readonly fastGlob.Entry[],
  cwd: string,
  links: TreeLinks,
): Promise<FoundInput[]> {
  const found: FoundInput[] = [];
  for (const { dirent, path } of entries) {
    if (dirent.isDirectory()) continue;
    const fate = dirent.isSymbolicLink() ? await links.judge(resolve(cwd, path), path) : null;
    if (fate?.kind === 'refused') found.push({ kind: 'failure', error: fate.error });
    else if (fate === null || fate.kind === 'file') found.push({ kind: 'file', path });
  }
  return found;
}

function pathOf(input: FoundInput): string {
  return input.kind === 'failure' ? input.error.path : input.path;
}

function unreadable(pattern: string, cause: unknown): UsageError {
  const reason = cause instanceof Error ? cause.message : 'unknown reason';
  return new UsageError(`${pattern}: cannot be read as a pattern: ${reason}`, { cause });
}
