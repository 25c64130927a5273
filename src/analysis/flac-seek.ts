import { readBlockHead } from './flac-block-head.js';
import {
  blockEnd,
  type FlacLayout,
  type FlacPlace,
  firstFrameOf,
  longestBlock,
} from './flac-layout.js';
import { readBytes } from './wav-source.js';

/** Bytes from which on it is no use to look closer: they are read in one go. */
const NEAR_BYTES = 2 ** 16;
/** More than the halvings of any file; where blocks are damaged the search ends early. */
const MOST_STEPS = 64;
/** Places that look like a block's beginning and are none, of which there is one in 2^30 bytes. */
const MOST_TRIED = 16;

/**
 * The beginning of a block not far before a frame, or of that which holds it. Blocks tell where they
 * belong, so that the place is found from any byte: by turns where it should be if the bytes were
 * spread evenly, and in the middle.
 */
export async function seekBlock(layout: FlacLayout, frame: number): Promise<FlacPlace> {
  let low: FlacPlace = { at: layout.start, firstFrame: 0 };
  let high: FlacPlace = { at: layout.end, firstFrame: layout.frames };
  for (let step = 0; step < MOST_STEPS && high.at - low.at > NEAR_BYTES; step++) {
    const share =
      step % 2 === 1 ? 0.5 : (frame - low.firstFrame) / (high.firstFrame - low.firstFrame);
    const guess = Math.floor(low.at + share * (high.at - low.at)) - NEAR_BYTES / 4;
    const at = Math.max(guess, low.at + 1);
    const found = await blockFrom(layout, at, { low, high });
    if (found !== null && found.firstFrame <= frame) low = found;
    else high = { at, firstFrame: found?.firstFrame ?? high.firstFrame };
  }
  return low;
}

/** The first whole block that begins at a byte or behind it. */
async function blockFrom(
  layout: FlacLayout,
  from: number,
  { low, high }: { readonly low: FlacPlace; readonly high: FlacPlace },
): Promise<FlacPlace | null> {
  const { stream, source, sync, blockFrames, end } = layout;
  const length = Math.min(2 * longestBlock(blockFrames, stream), end - from);
  const { buffer, length: filled } = await readBytes(source, from, length);
  const bytes = Buffer.from(buffer, 0, filled);
  let tried = 0;
  for (let at = -1; tried < MOST_TRIED; ) {
    at = bytes.indexOf(sync, at + 1);
    if (at === -1) return null;
    const head = readBlockHead(bytes, at, stream);
    if (head === null) continue;
    const firstFrame = firstFrameOf(head, layout);
    if (firstFrame <= low.firstFrame || firstFrame >= high.firstFrame) continue;
    tried++;
    if (blockEnd(bytes, at, head, layout, from + length === end) !== null) {
      return { at: from + at, firstFrame };
    }
  }
  return null;
}
