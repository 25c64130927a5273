import type { SampleFormat } from './sample-format.js';
import { type WavFault, wavError } from './wav-error.js';
import { badChannels, badRate, HIGHEST_RATE, LOWEST_RATE } from './wav-format.js';

/** What a FLAC file's first block of metadata says of the stream, checked. */
export interface FlacStream {
  /** Of the frames as they are handed on. */
  readonly format: SampleFormat;
  /** Frames there should be; 0 where the encoder did not know. */
  readonly frames: number;
  /** MD5 of the samples, hexadecimal; null where the encoder left it out. */
  readonly md5: string | null;
}

/** Bytes of the block. */
export const STREAM_BYTES = 34;

const NO_MD5 = '0'.repeat(32);

/**
 * Reads STREAMINFO. Least and most samples and bytes of a block are not asked: frames say it
 * themselves.
 * @param at byte of the content in the file
 * Source: RFC 9639, 8.2.
 */
export function parseStream(path: string, bytes: Uint8Array, at: number): FlacStream {
  const refuse = (offset: number, fault: Omit<WavFault, 'at'>) =>
    wavError(path, { ...fault, at: at + offset });
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  const sampleRate = view.getUint32(10) >>> 12;
  const channels = ((view.getUint8(12) >>> 1) & 7) + 1;
  const bits = ((view.getUint16(12) >>> 4) & 31) + 1;
  // The decoder hands out floats of 32 bits, which hold no more than 24, and of other lengths
  // nothing: it divides by 0.
  if (bits !== 8 && bits !== 16 && bits !== 24) throw refuse(12, badBits(bits));
  if (channels !== 1 && channels !== 2) throw refuse(12, badChannels(channels));
  if (sampleRate < LOWEST_RATE || sampleRate > HIGHEST_RATE) throw refuse(10, badRate(sampleRate));
  const frames = (view.getUint8(13) & 15) * 2 ** 32 + view.getUint32(14);
  const md5 = Array.from(bytes.subarray(18, STREAM_BYTES), hex).join('');
  return {
    format: { encoding: 'pcm', bitDepth: bits, channels, sampleRate },
    frames,
    md5: md5 === NO_MD5 ? null : md5,
  };
}

function hex(byte: number): string {
  return byte.toString(16).padStart(2, '0');
}

function badBits(bits: number): Omit<WavFault, 'at'> {
  return {
    code: 'bad-encoding',
    found: `${bits} bits a sample`,
    expected: '8, 16 or 24',
    remedy: 'export the file as FLAC of 24 bits, or as WAV',
  };
}
