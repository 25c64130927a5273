import type { Stats } from 'node:fs';
import { stat } from 'node:fs/promises';
import { resolve } from 'node:path';
import { UsageError } from '../errors.js';
import { findInFolder } from './find-in-folder.js';
import type { FoundInput } from './found-input.js';
import { accessError, systemNameOf } from './wav-access-error.js';

export interface FindOptions {
  /** Folder that relative arguments are relative to; the working folder by default. */
  readonly cwd?: string;
  /** Whether links that lead out of a folder are followed; refused by default. */
  readonly follow?: boolean;
}

/**
 * The inputs that the arguments name, in their order, each file once.
 * A file is taken as it is; a folder gives its files of sound and saved motions, deep, in natural
 * order (2.wav before 10.wav); what exists is never a pattern. What does not exist but reads as a
 * pattern gives the files it matches. A pattern that matches none is a UsageError; a path that is not there is an
 * entry of the result, and so is a link that leads out of the folder it was met in. A link that is
 * itself named is followed: who names it means what it leads to.
 */
export async function findInputs(
  args: readonly string[],
  { cwd = '.', follow = false }: FindOptions = {},
): Promise<FoundInput[]> {
  const found: FoundInput[] = [];
  for (const argument of args) {
    for (const input of await findOne(argument, cwd, follow)) found.push(input);
  }
  return eachOnce(found, cwd);
}

async function findOne(argument: string, cwd: string, follow: boolean): Promise<FoundInput[]> {
  if (argument === '') throw new UsageError('found an empty path, expected a file or a folder');
  let facts: Stats;
  try {
    facts = await stat(resolve(cwd, argument));
  } catch (cause) {
    if (systemNameOf(cause) === 'ENOENT') {
      // Few runs have a pattern that no shell has spelled out, and matching takes a large library.
      const { findMatches, isPattern } = await import('./find-matches.js');
      if (isPattern(argument)) return await findMatches(argument, cwd, follow);
    }
    return [{ kind: 'failure', error: accessError(argument, cause) }];
  }
  if (!facts.isDirectory()) return [{ kind: 'file', path: argument }];
  const inside = await findInFolder(argument, cwd, follow);
  return inside.length > 0 ? inside : [{ kind: 'empty-folder', path: argument }];
}

/** Keeps the first of what leads to the same place, however it is spelled. */
function eachOnce(found: readonly FoundInput[], cwd: string): FoundInput[] {
  const places = new Set<string>();
  return found.filter((input) => {
    const path = input.kind === 'failure' ? input.error.path : input.path;
    const place = resolve(cwd, path);
    if (places.has(place)) return false;
    places.add(place);
    return true;
  });
}
