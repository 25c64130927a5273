import type { AiffContainer } from './aiff-chunks.js';
import { type AiffEncoding, aiffEncoding } from './aiff-encoding.js';
import { readExtended } from './aiff-extended.js';
import type { SampleFormat } from './sample-format.js';
import { type WavFault, wavError } from './wav-error.js';
import { badChannels, badRate, HIGHEST_RATE, LOWEST_RATE } from './wav-format.js';

/** A common chunk, checked. */
export interface AiffCommon {
  readonly format: SampleFormat;
  readonly words: AiffEncoding;
  /** Frames that it says there are. */
  readonly frames: number;
}

/** Bytes that are looked at: what AIFF has, and the compression type of AIFF-C. */
export const COMMON_BYTES = 22;
const PLAIN_BYTES = 18;

/**
 * Reads the `COMM` chunk: channels, frames, sample size, rate as an 80-bit number, and in AIFF-C the
 * compression type.
 * @param bytes the chunk's content, its first COMMON_BYTES at most
 * @param at byte of the content in the file
 * Source: as in aiff-chunks.ts.
 */
export function parseCommon(
  path: string,
  bytes: Uint8Array,
  at: number,
  container: AiffContainer,
): AiffCommon {
  const refuse = (offset: number, fault: Omit<WavFault, 'at'>) =>
    wavError(path, { ...fault, at: at + offset });
  const least = container === 'AIFF' ? PLAIN_BYTES : COMMON_BYTES;
  if (bytes.length < least) throw refuse(0, shortCommon(bytes.length, least));

  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const compression =
    container === 'AIFF' ? 'NONE' : String.fromCharCode(...bytes.subarray(18, COMMON_BYTES));
  const words = aiffEncoding(compression, view.getUint16(6));
  if ('code' in words) throw refuse(container === 'AIFF' ? 6 : PLAIN_BYTES, words);

  const channels = view.getUint16(0);
  if (channels !== 1 && channels !== 2) throw refuse(0, badChannels(channels));

  const sampleRate = readExtended(view, 8);
  // Old computers had rates with a fraction: no converter here goes from one.
  const fits = Number.isInteger(sampleRate) && sampleRate >= LOWEST_RATE;
  if (!(fits && sampleRate <= HIGHEST_RATE)) throw refuse(8, badRate(sampleRate));

  const { encoding, bits } = words;
  const format = { encoding, bitDepth: bits, channels, sampleRate } as const;
  return { format, words, frames: view.getUint32(2) };
}

function shortCommon(length: number, least: number): Omit<WavFault, 'at'> {
  return {
    code: 'bad-header',
    found: `a common chunk of ${length} bytes`,
    expected: `at least ${least}`,
    remedy: 'export the file again',
  };
}
