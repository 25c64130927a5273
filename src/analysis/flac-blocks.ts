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
 * block follows the one before it without a gap, and its checksums are right. Two windows take
 * turns, so that the next is read while the blocks of one are used.
 * @throws InputError `sound-damaged` at the first that does not or whose are not
 */
export async function* readBlocks(
  layout: FlacLayout,
  firstFrame: number,
  endFrame: number,
): AsyncGenerator<FlacBatch, void, undefined> {
  const bytes = Math.min(WINDOW_BYTES, layout.end - layout.start);
  let [buffer, other] = [Buffer.allocUnsafe(bytes), Buffer.allocUnsafe(bytes)];
  let place = await seekBlock(layout, firstFrame);
  let window = windowAt(layout, place.at, buffer);
  while (place.firstFrame < endFrame) {
    const blocks = [...blocksIn(await window, place, layout)];
    const last = blocks.at(-1);
    if (last === undefined) throw flacDamaged(layout.source.path, place);
    place = endOf(last);
    [buffer, other] = [other, buffer];
    if (place.firstFrame < endFrame) window = windowAt(layout, place.at, buffer);
    // Thrown where it is waited for, if it is.
    window.catch(() => {});
    yield* batchesOf(
      blocks.filter((block) => {
        return block.firstFrame < endFrame && endOf(block).firstFrame > firstFrame;
      }),
    );
  }
}

interface FlacBlock extends FlacPlace {
  readonly bytes: Uint8Array;
  readonly frames: number;
}

function endOf({ at, firstFrame, bytes, frames }: FlacBlock): FlacPlace {
  return { at: at + bytes.length, firstFrame: firstFrame + frames };
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
): Generator<FlacBlock, void, undefined> {
  const isEnd = place.at + window.length === layout.end;
  let { firstFrame } = place;
  for (let from = 0; from < window.length; ) {
    const head = readBlockHead(window, from, layout.stream);
    if (head === null || firstFrameOf(head, layout) !== firstFrame) return;
    const end = blockEnd(window, from, head, layout, isEnd);
    if (end === null) return;
    const { frames } = head;
    yield { at: place.at + from, firstFrame, frames, bytes: window.subarray(from, end) };
    firstFrame += frames;
    from = end;
  }
}

function* batchesOf(blocks: readonly FlacBlock[]): Generator<FlacBatch, void, undefined> {
  let batch: FlacBlock[] = [];
  let frames = 0;
  for (const [index, block] of blocks.entries()) {
    batch.push(block);
    frames += block.frames;
    const [first] = batch;
    if (first === undefined || (frames < BATCH_FRAMES && index < blocks.length - 1)) continue;
    const { at, firstFrame } = first;
    yield { at, firstFrame, frames, blocks: batch.map(({ bytes }) => bytes) };
    batch = [];
    frames = 0;
  }
}
