import { constants, type Stats } from 'node:fs';
import { access, mkdir, realpath, stat } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { UsageError } from '../errors.js';
import { linkTarget } from './link-target.js';
import { safeText } from './safe-text.js';
import { isSystemError, reasonText } from './write-failure.js';

export interface OutputCheck {
  /** The flag that gave the path, such as `--table`. */
  readonly option?: string;
  /** Files that are read and must not be written over. */
  readonly inputs?: readonly string[];
  /** What is written already in the same run, by which flag; takes the path. */
  readonly written?: Map<string, string>;
}

/**
 * Refuses, before any work, a path where no file could be written afterwards: a folder, a name in a
 * folder that is missing or may not be written to, a file that may not be, one of the inputs.
 * @throws UsageError
 */
export async function checkOutputFile(path: string, check: OutputCheck = {}): Promise<void> {
  const refuse = refuser(path, check);
  if (path === '') return refuse('a file name is expected');
  const found = await look(path, refuse);
  if (found?.isDirectory() || /[\\/]$/.test(path))
    return refuse('it is a folder, a file is expected');
  // What is no file is written to where it is, so that its folder does not matter.
  if (found === null || found.isFile()) {
    await checkFolder(dirname(await linkTarget(path)), refuse);
  }
  if (found === null || found.isFile()) await claim(path, check, refuse);
  if (found === null) return;
  await mayWrite(path, constants.W_OK, refuse);
  for (const input of check.inputs ?? []) {
    if (await isSame(found, input)) return refuse(`it is also read, as ${safeText(input)}`);
  }
}

/**
 * The same for a folder that files are to be written into; makes it if only itself is missing.
 * @throws UsageError
 */
export async function checkOutputFolder(path: string, check: OutputCheck = {}): Promise<void> {
  const refuse = refuser(path, check);
  if (path === '') return refuse('a folder is expected');
  const found = await look(path, refuse);
  if (found !== null) return checkFolder(path, refuse);
  await checkFolder(dirname(path), refuse);
  await mkdir(path).catch((error: unknown) => refuse(reasonOf(error)));
}

/** A file takes one output of a run; a device takes any number. */
async function claim(
  path: string,
  { option, written }: OutputCheck,
  refuse: Refuse,
): Promise<void> {
  if (written === undefined) return;
  const target = await linkTarget(path);
  const real = join(await realpath(dirname(target)), basename(target));
  const other = written.get(real);
  if (other !== undefined) return refuse(`it is also written by ${other}`);
  written.set(real, option ?? 'another output');
}

type Refuse = (reason: string) => never;

function refuser(path: string, { option }: OutputCheck): Refuse {
  return (reason) => {
    const place = option === undefined ? '' : `${option}: `;
    throw new UsageError(`${place}${path === '' ? 'nothing given' : safeText(path)}: ${reason}`);
  };
}

/** null where nothing is. */
async function look(path: string, refuse: Refuse): Promise<Stats | null> {
  try {
    return await stat(path);
  } catch (error) {
    return isSystemError(error) && error.code === 'ENOENT' ? null : refuse(reasonOf(error));
  }
}

async function checkFolder(folder: string, refuse: Refuse): Promise<void> {
  const found = await look(folder, refuse);
  if (found === null) return refuse(`the folder ${safeText(folder)} is not there`);
  if (!found.isDirectory()) return refuse(`${safeText(folder)} is not a folder`);
  await mayWrite(folder, constants.W_OK | constants.X_OK, refuse);
}

async function mayWrite(path: string, mode: number, refuse: Refuse): Promise<void> {
  await access(path, mode).catch((error: unknown) => refuse(reasonOf(error)));
}

function reasonOf(error: unknown): string {
  if (!isSystemError(error)) throw error;
  return reasonText(error);
}

/** By device and number: links and names that differ in case only are the same file. */
async function isSame(found: Stats, path: string): Promise<boolean> {
  const other = await stat(path).catch(() => null);
  return other !== null && other.dev === found.dev && other.ino === found.ino;
}
