import { resolve } from 'node:path';
import fastGlob from 'fast-glob';
import { UsageError } from '../errors.js';
import { isLinkToFolder } from './find-in-folder.js';
import type { FoundInput } from './found-input.js';
import { byNaturalOrder } from './natural-order.js';
import { oneEachSide } from './side-names.js';
import { accessError, systemNameOf } from './wav-access-error.js';

/**
 * The files that a pattern matches, in natural order; upper and lower case are alike, hidden files
 * are left out, folders never match, links to folders are not followed. Of a side that is matched as
 * sound and as a saved motion, only the sound is taken.
 * A pattern that matches nothing, or cannot be one, is a UsageError.
 */
export async function findMatches(pattern: string, cwd: string): Promise<FoundInput[]> {
  let paths: string[];
  try {
    paths = await matchingFiles(pattern, cwd);
  } catch (cause) {
    if (systemNameOf(cause) === undefined) throw unreadable(pattern, cause);
    return [{ kind: 'failure', error: accessError(pattern, cause) }];
  }
  if (paths.length === 0) {
    const message = `${pattern}: no such file is there, and as a pattern it matches none`;
    throw new UsageError(`${message}; check the spelling and the folder`);
  }
  return oneEachSide(paths)
    .sort(byNaturalOrder)
    .map((path) => ({ kind: 'file', path }));
}

async function matchingFiles(pattern: string, cwd: string): Promise<string[]> {
  // onlyFiles would leave out links to files when links to folders are not followed.
  const entries = await fastGlob.glob(pattern, {
    cwd,
    caseSensitiveMatch: false,
    followSymbolicLinks: false,
    onlyFiles: false,
    objectMode: true,
  });
  const paths: string[] = [];
  for (const { dirent, path } of entries) {
    if (!dirent.isDirectory() && !(await isLinkToFolder(dirent, resolve(cwd, path)))) {
      paths.push(path);
    }
  }
  return paths;
}

function unreadable(pattern: string, cause: unknown): UsageError {
  const reason = cause instanceof Error ? cause.message : 'unknown reason';
  return new UsageError(`${pattern}: cannot be read as a pattern: ${reason}`, { cause });
}
