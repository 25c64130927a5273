import { createHash } from 'node:crypto';
import { readBlocks } from './flac-blocks.js';
import { flacDiffers } from './flac-damaged.js';
import { flacDecoder } from './flac-decoder.js';
import type { FlacLayout } from './flac-layout.js';
import { flacWords } from './flac-words.js';
import type { FrameRange } from './frame-source.js';
import { frameBytes } from './sample-format.js';

const DEFAULT_BLOCK_BYTES = 2 ** 20;

/**
 * The frames of a range, decoded. Memory does not grow with the file. All blocks' checksums are
 * checked; who reads the whole program in one go has its MD5 checked as well.
 * @param range 0 ≤ firstFrame ≤ endFrame ≤ frames, else a RangeError
 */
export async function* readFlac(
  layout: FlacLayout,
  range: FrameRange = {},
): AsyncGenerator<Uint8Array, void, undefined> {
  const { stream, frames, source } = layout;
  const { firstFrame = 0, endFrame = frames, blockBytes = DEFAULT_BLOCK_BYTES } = range;
  if (!(firstFrame >= 0 && firstFrame <= endFrame && endFrame <= frames)) {
    throw new RangeError(`frames ${firstFrame} … ${endFrame} of ${frames}`);
  }
  const bytesPerFrame = frameBytes(stream.format);
  const most = Math.max(1, Math.floor(blockBytes / bytesPerFrame)) * bytesPerFrame;
  const md5 = firstFrame === 0 && endFrame === frames && hasMd5(layout) ? createHash('md5') : null;
  const decoder = flacDecoder(layout);
  try {
    for await (const batch of readBlocks(layout, firstFrame, endFrame)) {
      const samples = await decoder.decode(batch);
      const from = Math.max(0, firstFrame - batch.firstFrame);
      const until = Math.min(batch.frames, endFrame - batch.firstFrame);
      const words = flacWords(samples, stream, from, until);
      md5?.update(words);
      for (let at = 0; at < words.length; at += most) yield words.subarray(at, at + most);
    }
  } finally {
    decoder.close();
  }
  if (md5 !== null && md5.digest('hex') !== stream.md5) throw flacDiffers(source.path);
}

/**
 * True where the MD5 that the encoder has left is of these bytes: it is of signed words, which here
 * those of 16 and 24 bits are, and of all of them.
 * Source: RFC 9639, 8.2.
 */
function hasMd5({ stream, frames }: FlacLayout): boolean {
  const { format, md5 } = stream;
  return md5 !== null && format.bitDepth > 8 && frames === stream.frames;
}
