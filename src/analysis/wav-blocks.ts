import { InputError } from '../errors.js';
import type { FrameRange } from './frame-source.js';
import { frameBytes } from './sample-format.js';
import type { LaidFrames } from './wav-file.js';
import { type ByteSource, readInto } from './wav-source.js';

const DEFAULT_BLOCK_BYTES = 2 ** 20;

/** An open file with frames in it. */
interface OpenFrames {
  readonly file: LaidFrames;
  readonly source: ByteSource;
}

/**
 * The raw frames of a range, block by block, each of whole frames. Two buffers take turns, so that
 * the next block is read while one is used: a block holds until the next is asked for. Memory does
 * not grow with the file.
 * @param range 0 ≤ firstFrame ≤ endFrame ≤ frames, else a RangeError
 * An InputError `changed-while-read` if the file became shorter than its header was read with.
 */
export async function* readFrames(
  wav: OpenFrames,
  range: FrameRange = {},
): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined> {
  const { file } = wav;
  const { firstFrame = 0, endFrame = file.frames, blockBytes = DEFAULT_BLOCK_BYTES } = range;
  if (!(firstFrame >= 0 && firstFrame <= endFrame && endFrame <= file.frames)) {
    throw new RangeError(`frames ${firstFrame} … ${endFrame} of ${file.frames}`);
  }
  const bytesPerFrame = frameBytes(file.format);
  const blockFrames = Math.max(1, Math.floor(blockBytes / bytesPerFrame));
  const buffers = [0, 1].map(
    () => new Uint8Array(Math.min(blockFrames, endFrame - firstFrame) * bytesPerFrame),
  );
  const begin = (frame: number): Promise<Read> | null => {
    const frames = Math.min(blockFrames, endFrame - frame);
    if (frames <= 0) return null;
    const buffer = buffers[((frame - firstFrame) / blockFrames) % 2]!;
    return readBlock(wav, buffer.subarray(0, frames * bytesPerFrame), frame);
  };
  let next = begin(firstFrame);
  for (let frame = firstFrame; next !== null; ) {
    const { block, error } = await next;
    if (error !== null) throw error;
    frame += blockFrames;
    next = begin(frame);
    yield block;
  }
}

/** A block, or why it could not be read: kept for when its turn comes, not thrown ahead of it. */
interface Read {
  readonly block: Uint8Array<ArrayBuffer>;
  readonly error: unknown;
}

async function readBlock(
  { file, source }: OpenFrames,
  block: Uint8Array<ArrayBuffer>,
  frame: number,
): Promise<Read> {
  try {
    const at = file.dataOffset + frame * frameBytes(file.format);
    const filled = await readInto(source, block, at);
    return { block, error: filled < block.length ? shrunk(file.path, at + filled) : null };
  } catch (error) {
    return { block, error };
  }
}

/** The error for a file that ends at a byte before which it was expected to go on. */
export function shrunk(path: string, at: number): InputError {
  const message = `${path}: byte ${at}: found the end of the file, expected more frames`;
  const remedy = 'it became shorter while it was read: wait until it is written, then try again';
  return new InputError(path, 'changed-while-read', `${message}; ${remedy}`);
}
