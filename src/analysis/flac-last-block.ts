import { COUNTS_BLOCKS, MOST_FRAMES, readBlockHead } from './flac-block-head.js';
import {
  blockEnd,
  type FlacLayout,
  type FlacPlace,
  firstFrameOf,
  longestBlock,
} from './flac-layout.js';
import { readBytes } from './wav-source.js';

/** The last block that is whole. */
export interface FlacLastBlock extends FlacPlace {
  readonly frames: number;
  /** Byte after it. */
  readonly end: number;
}

/** Bytes before the end in which it is looked for. */
const MOST_BYTES = 2 ** 24;
/** Places that look like a block's beginning and are none, of which there is one in 2^30 bytes. */
const MOST_TRIED = 64;

/**
 * Looks for the last whole block from the end of the file backwards: what is behind it is a block
 * that was cut off, or no sound.
 * @param end byte after all blocks
 * @returns null if there is none within 16 MiB before the end
 */
export async function findLastBlock(
  layout: Omit<FlacLayout, 'end' | 'frames'>,
  end: number,
): Promise<FlacLastBlock | null> {
  const { source, start, stream, blockFrames } = layout;
  const shortest = 4 * longestBlock(Math.max(blockFrames, 4096), stream);
  for (let length = shortest; ; length *= 8) {
    const from = Math.max(start, end - Math.min(length, MOST_BYTES));
    const { buffer, length: filled } = await readBytes(source, from, end - from);
    const bytes = Buffer.from(buffer, 0, filled);
    const last = lastIn(bytes, from, layout);
    if (last !== null || from === start || length >= MOST_BYTES) return last;
  }
}

function lastIn(
  bytes: Buffer,
  offset: number,
  layout: Omit<FlacLayout, 'end' | 'frames'>,
): FlacLastBlock | null {
  let tried = 0;
  for (let at = bytes.length; at > 0 && tried < MOST_TRIED; ) {
    at = bytes.lastIndexOf(layout.sync, at - 1);
    if (at === -1) return null;
    const head = readBlockHead(bytes, at, layout.stream);
    if (head === null) continue;
    tried++;
    const end = blockEnd(bytes, at, head, layout, true);
    const firstFrame = firstFrameOf(head, layout);
    if (end === null || firstFrame > mostFramesBefore(offset + at, layout)) continue;
    return { at: offset + at, end: offset + end, firstFrame, frames: head.frames };
  }
  return null;
}

/** Frames that blocks of the least bytes could hold up to a place: a number may lie. */
function mostFramesBefore(
  at: number,
  { start, sync, blockFrames, stream }: Omit<FlacLayout, 'end' | 'frames'>,
): number {
  // Head, a sample a channel, CRC.
  const leastBytes = 6 + stream.format.channels * (1 + stream.format.bitDepth / 8) + 2;
  const mostFrames = sync[1] === COUNTS_BLOCKS ? blockFrames : MOST_FRAMES;
  return ((at - start) / leastBytes) * mostFrames;
}
