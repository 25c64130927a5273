import { readBlocks } from './flac-blocks.js';
import { flacDecoder } from './flac-decoder.js';
import type { FlacLayout } from './flac-layout.js';
import { flacWords } from './flac-words.js';
import { frameBytes } from './sample-format.js';

/** The decoded frames of a FLAC file from one on, as many at a time as are wanted. */
export interface FlacReader {
  /** The next frame. */
  readonly frame: () => number;
  /** At most so many bytes of the next frames, at least one frame; the last one is not behind it. */
  readonly take: (bytes: number) => Promise<Uint8Array>;
  /** Lets go of its memory. */
  readonly close: () => Promise<void>;
}

export function flacReader(layout: FlacLayout, firstFrame: number): FlacReader {
  const { stream, frames } = layout;
  const bytesPerFrame = frameBytes(stream.format);
  const decoder = flacDecoder(layout);
  const batches = readBlocks(layout, firstFrame, frames);
  let frame = firstFrame;
  let words: Uint8Array = new Uint8Array(0);
  return {
    frame: () => frame,
    take: async (bytes) => {
      if (words.length === 0) {
        const next = await batches.next();
        if (next.done === true) throw new RangeError(`frame ${frame} of ${frames}`);
        const samples = await decoder.decode(next.value);
        words = flacWords(samples, stream, frame - next.value.firstFrame, next.value.frames);
      }
      const taken = words.subarray(0, bytes);
      words = words.subarray(taken.length);
      frame += taken.length / bytesPerFrame;
      return taken;
    },
    close: async () => {
      decoder.close();
      await batches.return();
    },
  };
}
