import { readBlockHead } from './flac-block-head.js';
import { flacDamaged } from './flac-damaged.js';
import { blockEnd, type FlacLayout, type FlacPlace, firstFrameOf } from './flac-layout.js';
import { seekBlock } from './flac-seek.js';
import { shrunk } from './wav-blocks.js';
import { readInto } from './wav-source.js';

/** Whole blocks that follow one another. */
export interface FlacBatch extends FlacPlace {
  readonly frames: number;
  readonly blocks: readonly Uint8Array[];
}

/** Bytes read at a time: more than twice the longest block there can be. */
const WINDOW_BYTES = 2 ** 20;
/** Frames of a batch, if it has more than one block: what is decoded at a time. */
const BATCH_FRAMES = 2 ** 15;

/**
 * The blocks that hold a range of frames, in batches that hold until the next is asked for. Every
 * block follows the one before it without a gap, and its checksums are right.
 * @throws InputError `sound-damaged` at the first that does not or whose are not
 */
export async function* readBlocks(
  layout: FlacLayout,
  firstFrame: number,
  endFrame: number,
): AsyncGenerator<FlacBatch, void, undefined> {
  const buffer = Buffer.allocUnsafe(Math.min(WINDOW_BYTES, layout.end - layout.start));
  let place = await seekBlock(layout, firstFrame);
  while (place.firstFrame < endFrame) {
    const window = await windowAt(layout, place.at, buffer);
    const begun = place;
    let batch: FlacBatch = { ...place, frames: 0, blocks: [] };
    for (const { bytes, frames } of blocksIn(window, place, layout)) {
      place = { at: place.at + bytes.length, firstFrame: place.firstFrame + frames };
      batch =
        place.firstFrame <= firstFrame
          ? { ...place, frames: 0, blocks: [] }
          : { ...batch, frames: batch.frames + frames, blocks: [...batch.blocks, bytes] };
      if (place.firstFrame >= endFrame) break;
      if (batch.frames >= BATCH_FRAMES) {
        yield batch;
        batch = { ...place, frames: 0, blocks: [] };
      }
    }
    if (place === begun) throw flacDamaged(layout.source.path, place);
    if (batch.frames > 0) yield batch;
  }
}

async function windowAt({ source, end }: FlacLayout, at: number, buffer: Buffer): Promise<Buffer> {
  const wanted = Math.min(buffer.length, end - at);
  const filled = await readInto(source, buffer.subarray(0, wanted), at);
  if (filled < wanted) throw shrunk(source.path, at + filled);
  return buffer.subarray(0, filled);
}

/** The blocks that are whole in a window, from its first byte on, up to the first that is not. */
function* blocksIn(
  window: Buffer,
  place: FlacPlace,
  layout: FlacLayout,
): Generator<{ bytes: Uint8Array; frames: number }, void, undefined> {
  const isEnd = place.at + window.length === layout.end;
  let { firstFrame } = place;
  for (let at = 0; at < window.length; ) {
    const head = readBlockHead(window, at, layout.stream);
    if (head === null || firstFrameOf(head, layout) !== firstFrame) return;
    const end = blockEnd(window, at, head, layout, isEnd);
    if (end === null) return;
    yield { bytes: window.subarray(at, end), frames: head.frames };
    firstFrame += head.frames;
    at = end;
  }
}
