import { type FlacOptions, flacBlocks, flacHead } from './flac-writer.js';
import { joined, wordBytes } from './wav-writer.js';

/** Noise of n bits, both ends of the range among it. */
export function noise(words: number, bits: number): number[] {
  const half = 2 ** (bits - 1);
  const all = Array.from(
    { length: words },
    (_, word) => ((word * 7919 * 104_729) % (2 * half)) - half,
  );
  return [-half, half - 1, -half, half - 1, 0, 1, -1, 1 - half, ...all].slice(0, words);
}

export const FRAMES = 60_000;
export const WORDS = noise(2 * FRAMES, 16);
export const RAW = wordBytes(WORDS, 'pcm', 16);
export const PLAIN: FlacOptions = { words: WORDS, blockFrames: 300 };
export const BLOCKS = flacBlocks(PLAIN);
export const HEAD = flacHead(PLAIN);
export const WHOLE = joined([HEAD, ...BLOCKS]);
export const VARIED = Array.from({ length: 200 }, (_, at) => (at % 2 === 0 ? 100 : 500));
