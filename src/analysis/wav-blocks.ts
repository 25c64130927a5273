import { InputError } from '../errors.js';
import { frameBytes } from './sample-format.js';
import type { OpenWav } from './wav-file.js';
import { readInto } from './wav-source.js';

/** Which frames to read, and how many bytes at a time. */
export interface FrameRange {
  /** First frame, 0 by default. */
  readonly firstFrame?: number;
  /** Frame after the last, all by default. */
  readonly endFrame?: number;
  /** Bytes of a block, rounded down to whole frames but at least one; 1 MiB by default. */
  readonly blockBytes?: number;
}

const DEFAULT_BLOCK_BYTES = 2 ** 20;

/**
 * The raw frames of a range, block by block, each of whole frames. The blocks share one buffer:
 * a block holds until the next is asked for. Memory does not grow with the file.
 * @param range 0 ≤ firstFrame ≤ endFrame ≤ frames, else a RangeError
 * An InputError `changed-while-read` if the file became shorter than its header was read with.
 */
export async function* readFrames(
  { file, source }: OpenWav,
  range: FrameRange = {},
): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined> {
  const { firstFrame = 0, endFrame = file.frames, blockBytes = DEFAULT_BLOCK_BYTES } = range;
  if (!(firstFrame >= 0 && firstFrame <= endFrame && endFrame <= file.frames)) {
    throw new RangeError(`frames ${firstFrame} … ${endFrame} of ${file.frames}`);
  }
  const bytesPerFrame = frameBytes(file.format);
  const blockFrames = Math.max(1, Math.floor(blockBytes / bytesPerFrame));
  const buffer = new Uint8Array(Math.min(blockFrames, endFrame - firstFrame) * bytesPerFrame);
  for (let frame = firstFrame; frame < endFrame; frame += blockFrames) {
    const block = buffer.subarray(0, Math.min(blockFrames, endFrame - frame) * bytesPerFrame);
    const at = file.dataOffset + frame * bytesPerFrame;
    const filled = await readInto(source, block, at);
    if (filled < block.length) throw shrunk(file.path, at + filled);
    yield block;
  }
}

function shrunk(path: string, at: number): InputError {
  const message = `${path}: byte ${at}: found the end of the file, expected more frames`;
  const remedy = 'it became shorter while it was read: wait until it is written, then try again';
  return new InputError(path, 'changed-while-read', `${message}; ${remedy}`);
}
