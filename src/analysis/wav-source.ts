import { constants, readSync } from 'node:fs';
import { type FileHandle, open, stat } from 'node:fs/promises';
import { InputError } from '../errors.js';
import { changedWhileRead } from './changed-while-read.js';
import { accessError } from './wav-access-error.js';

/** A regular file, open for positioned reads. */
export interface ByteSource {
  readonly path: string;
  readonly handle: FileHandle;
  /** Bytes, when it was opened. */
  readonly size: number;
}

/**
 * Opens a regular file, hands it to `use` and closes it, whatever happens.
 * A file that was written to meanwhile is an InputError `changed-while-read`, whatever `use` gave.
 * Anything else (folder, pipe, socket, device) is an InputError `not-a-file`, at once: a pipe
 * without a writer is never waited for.
 */
export async function withSource<T>(
  path: string,
  use: (source: ByteSource) => Promise<T>,
): Promise<T> {
  const handle = await openRegular(path);
  try {
    // Asked again of the handle: the name may stand for something else by now.
    const facts = await handle.stat();
    if (!facts.isFile()) throw notAFile(path);
    const result = await use({ path, handle, size: facts.size });
    const after = await handle.stat();
    if (after.size !== facts.size) {
      throw changedWhileRead(path, `${after.size} bytes`, `${facts.size} as when it was opened`);
    }
    if (after.mtimeMs !== facts.mtimeMs) {
      throw changedWhileRead(path, 'that it was written to', 'it as it was when it was opened');
    }
    return result;
  } finally {
    await handle.close();
  }
}

async function openRegular(path: string): Promise<FileHandle> {
  try {
    // Opening a device can act on it, so look first.
    if (!(await stat(path)).isFile()) throw notAFile(path);
    return await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
  } catch (cause) {
    throw accessError(path, cause);
  }
}

function notAFile(path: string): InputError {
  const message = `${path}: found a folder, pipe, socket or device, expected a regular file`;
  return new InputError(path, 'not-a-file', `${message}; name a sound file or a folder of them`);
}

/**
 * Fills `target` from byte `at` on.
 * @returns bytes read: fewer than asked for only at the end of the file
 */
export async function readInto(
  source: ByteSource,
  target: Uint8Array,
  at: number,
): Promise<number> {
  let filled = 0;
  while (filled < target.length) {
    let count: number;
    try {
      const left = target.length - filled;
      count = (await source.handle.read(target, filled, left, at + filled)).bytesRead;
    } catch (cause) {
      throw accessError(source.path, cause);
    }
    if (count === 0) break;
    filled += count;
  }
  return filled;
}

/** The same by this thread, which waits for the disk. */
export function readNow(source: ByteSource, target: Uint8Array, at: number): number {
  let filled = 0;
  while (filled < target.length) {
    let count: number;
    try {
      count = readSync(source.handle.fd, target, filled, target.length - filled, at + filled);
    } catch (cause) {
      throw accessError(source.path, cause);
    }
    if (count === 0) break;
    filled += count;
  }
  return filled;
}

/** The bytes from `at` on, at most `length` of them: fewer at the end of the file. */
export async function readBytes(
  source: ByteSource,
  at: number,
  length: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const target = new Uint8Array(length);
  return target.subarray(0, await readInto(source, target, at));
}
