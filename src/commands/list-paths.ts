import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { text } from 'node:stream/consumers';
import { UsageError } from '../errors.js';
import type { Surroundings } from './surroundings.js';

/** The paths of the command line and those of --files-from, in that order. */
export async function listPaths(
  paths: readonly string[],
  filesFrom: string | undefined,
  { stdin, cwd }: Surroundings,
): Promise<string[]> {
  if (filesFrom === undefined) {
    if (paths.length > 0) return [...paths];
    throw new UsageError('no path was given: give a path, or --files-from');
  }
  const list = filesFrom === '-' ? await text(stdin) : await readList(filesFrom, cwd);
  const lines = list.split(/\r?\n/).filter((line) => line !== '');
  return [...paths, ...lines];
}

async function readList(path: string, cwd: string): Promise<string> {
  try {
    return await readFile(resolve(cwd, path), 'utf8');
  } catch (cause) {
    const reason = cause instanceof Error ? cause.message.split(',')[0] : 'unknown reason';
    throw new UsageError(`--files-from: ${path} cannot be read: ${reason}`, { cause });
  }
}
