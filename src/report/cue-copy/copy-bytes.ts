import type { FileHandle } from 'node:fs/promises';
import { type ByteSource, readInto } from '../../analysis/wav-source.js';
import { InputError } from '../../errors.js';

const BLOCK_BYTES = 2 ** 20;

/** Appends so many bytes of a file, from `at` on, a block at a time. */
export async function copyBytes(
  source: ByteSource,
  at: number,
  length: number,
  handle: FileHandle,
): Promise<void> {
  const buffer = new Uint8Array(Math.min(BLOCK_BYTES, length));
  for (let copied = 0; copied < length; ) {
    const block = buffer.subarray(0, Math.min(buffer.length, length - copied));
    const count = await readInto(source, block, at + copied);
    if (count < block.length) throw shrunk(source.path, at + copied + count);
    await writeBytes(handle, block);
    copied += count;
  }
}

/** Appends all of the bytes. */
export async function writeBytes(handle: FileHandle, bytes: Uint8Array): Promise<void> {
  for (let written = 0; written < bytes.length; ) {
    written += (await handle.write(bytes, written, bytes.length - written)).bytesWritten;
  }
}

function shrunk(path: string, at: number): InputError {
  const message = `${path}: byte ${at}: found the end of the file, expected more of it`;
  const remedy = 'it became shorter while it was copied: wait until it is written, then try again';
  return new InputError(path, 'changed-while-read', `${message}; ${remedy}`);
}
