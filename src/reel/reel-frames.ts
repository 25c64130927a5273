import type { FrameSource } from '../analysis/frame-source.js';
import { frameBytes, type SampleFormat } from '../analysis/sample-format.js';
import type { ReelLayout } from './reel-layout.js';

const BLOCK_BYTES = 2 ** 20;

/**
 * What the frames of a reel are: the program's own, bit for bit; where a sheet has mixed them of
 * several files, which is in 64-bit float, 32-bit float.
 */
export function reelFormat({ format, tallies }: FrameSource): SampleFormat {
  return tallies === true ? { ...format, encoding: 'float', bitDepth: 32 } : format;
}

/** The frames of a reel, block by block. */
export async function* reelFrames(
  source: FrameSource,
  { places, frames }: ReelLayout,
): AsyncGenerator<Uint8Array, void, undefined> {
  const format = reelFormat(source);
  let frame = 0;
  for (const { atFrame, firstFrame, endFrame } of places) {
    yield* silence(format, atFrame - frame);
    for await (const block of source.read({ firstFrame, endFrame })) {
      yield source.tallies === true ? asFloat32(block) : block;
    }
    frame = atFrame + endFrame - firstFrame;
  }
  yield* silence(format, frames - frame);
}

function* silence(format: SampleFormat, frames: number): Generator<Uint8Array, void, undefined> {
  const most = Math.floor(BLOCK_BYTES / frameBytes(format));
  // Eight bits are unsigned.
  const word = format.encoding === 'pcm' && format.bitDepth === 8 ? 128 : 0;
  for (let left = frames; left > 0; left -= most) {
    yield new Uint8Array(Math.min(left, most) * frameBytes(format)).fill(word);
  }
}

/** 64-bit words, little endian, as 32-bit ones. */
function asFloat32(block: Uint8Array): Uint8Array {
  const from = new DataView(block.buffer, block.byteOffset, block.byteLength);
  const to = new DataView(new ArrayBuffer(block.byteLength / 2));
  for (let at = 0; at < to.byteLength; at += 4)
    to.setFloat32(at, from.getFloat64(2 * at, true), true);
  return new Uint8Array(to.buffer);
}
