import { type FlacBlockHead, readBlockHead } from './flac-block-head.js';
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
    const bytes = Buffer.from((await readBytes(source, from, end - from)).buffer);
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
    if (end !== null) return placed(at, end, offset, head, layout);
  }
  return null;
}

function placed(
  at: number,
  end: number,
  offset: number,
  head: FlacBlockHead,
  layout: Pick<FlacLayout, 'blockFrames'>,
): FlacLastBlock {
  const firstFrame = firstFrameOf(head, layout);
  return { at: offset + at, end: offset + end, firstFrame, frames: head.frames };
}
