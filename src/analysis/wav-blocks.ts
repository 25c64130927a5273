import { setImmediate } from 'node:timers/promises';
import { InputError } from '../errors.js';
import type { FrameRange } from './frame-source.js';
import { frameBytes } from './sample-format.js';
import type { LaidFrames } from './wav-file.js';
import { type ByteSource, readInto, readNow } from './wav-source.js';

const DEFAULT_BLOCK_BYTES = 2 ** 20;

/** An open file with frames in it. */
interface OpenFrames {
  readonly file: LaidFrames;
  readonly source: ByteSource;
}

/**
 * The raw frames of a range, block by block, each of whole frames; a block holds until the next is
 * asked for. Memory does not grow with the file.
 * @param range 0 ≤ firstFrame ≤ endFrame ≤ frames, else a RangeError
 * @throws InputError `changed-while-read` if the file became shorter than its header was read with
 */
export function readFrames(
  wav: OpenFrames,
  range: FrameRange = {},
): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined> {
  const { frames } = wav.file;
  const { firstFrame = 0, endFrame = frames, blockBytes = DEFAULT_BLOCK_BYTES, room } = range;
  if (!(firstFrame >= 0 && firstFrame <= endFrame && endFrame <= frames)) {
    throw new RangeError(`frames ${firstFrame} … ${endFrame} of ${frames}`);
  }
  const span = { firstFrame, endFrame };
  return room === undefined ? readAhead(wav, span, blockBytes) : readInPlace(wav, span, room);
}

type Span = Required<Pick<FrameRange, 'firstFrame' | 'endFrame'>>;

/** Two buffers take turns, so that the next block is read while one is used. */
async function* readAhead(
  wav: OpenFrames,
  { firstFrame, endFrame }: Span,
  blockBytes: number,
): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined> {
  const bytesPerFrame = frameBytes(wav.file.format);
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

/** Bytes after which signals are answered and progress is shown. */
const BREATH_BYTES = 2 ** 20;

/**
 * One block after the other where it is wanted, by this thread itself: for two of them to take turns
 * costs more than reading from the system's memory. What lies on a disk it has read ahead.
 */
async function* readInPlace(
  { file, source }: OpenFrames,
  { firstFrame, endFrame }: Span,
  room: Uint8Array<ArrayBuffer>,
): AsyncGenerator<Uint8Array<ArrayBuffer>, void, undefined> {
  const bytesPerFrame = frameBytes(file.format);
  const most = room.length - (room.length % bytesPerFrame);
  const end = file.dataOffset + endFrame * bytesPerFrame;
  let held = 0;
  for (let at = file.dataOffset + firstFrame * bytesPerFrame; at < end; at += most) {
    yield blockNow(file.path, source, room.subarray(0, Math.min(most, end - at)), at);
    held += most;
    if (held < BREATH_BYTES) continue;
    held = 0;
    await setImmediate();
  }
}

function blockNow(
  path: string,
  source: ByteSource,
  block: Uint8Array<ArrayBuffer>,
  at: number,
): Uint8Array<ArrayBuffer> {
  const filled = readNow(source, block, at);
  if (filled < block.length) throw shrunk(path, at + filled);
  return block;
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
