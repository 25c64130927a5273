import { flacDiffers } from './flac-damaged.js';
import type { FlacLayout } from './flac-layout.js';
import { type FlacReader, flacReader } from './flac-reader.js';
import type { FrameRange } from './frame-source.js';
import { frameBytes } from './sample-format.js';

const DEFAULT_BLOCK_BYTES = 2 ** 20;

/** The frames of a FLAC file. */
export class FlacFrames {
  readonly #layout: FlacLayout;
  /** Where the last reader has ended: who goes on from there begins no new one. */
  #held: FlacReader | null = null;

  constructor(layout: FlacLayout) {
    this.#layout = layout;
  }

  /**
   * The frames of a range, decoded. Memory does not grow with the file. All blocks' checksums are
   * checked; who reads the whole program in one go has its MD5 checked as well.
   * @param range 0 ≤ firstFrame ≤ endFrame ≤ frames, else a RangeError
   */
  async *read(range: FrameRange = {}): AsyncGenerator<Uint8Array, void, undefined> {
    const { stream, frames, source } = this.#layout;
    const { firstFrame = 0, endFrame = frames, blockBytes = DEFAULT_BLOCK_BYTES } = range;
    if (!(firstFrame >= 0 && firstFrame <= endFrame && endFrame <= frames)) {
      throw new RangeError(`frames ${firstFrame} … ${endFrame} of ${frames}`);
    }
    const bytesPerFrame = frameBytes(stream.format);
    const most = Math.max(1, Math.floor(blockBytes / bytesPerFrame)) * bytesPerFrame;
    const isWhole = firstFrame === 0 && endFrame === frames;
    const md5 = isWhole && hasMd5(this.#layout) ? await newMd5() : null;
    let reader: FlacReader | null = this.#readerAt(firstFrame);
    try {
      while (reader.frame() < endFrame) {
        const left = (endFrame - reader.frame()) * bytesPerFrame;
        const words = await reader.take(Math.min(most, left));
        md5?.update(words);
        yield words;
      }
      if (md5 !== null && md5.digest('hex') !== stream.md5) throw flacDiffers(source.path);
      [reader, this.#held] = [this.#held, reader];
    } finally {
      await reader?.close();
    }
  }

  #readerAt(frame: number): FlacReader {
    const held = this.#held;
    if (held === null || held.frame() !== frame) return flacReader(this.#layout, frame);
    this.#held = null;
    return held;
  }
}

async function newMd5() {
  const { createHash } = await import('./create-hash.js');
  return createHash('md5');
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
