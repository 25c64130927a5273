import { ascii, joined } from './wav-writer.js';

/** Builds AIFF and AIFF-C files for tests, right or wrong. */

export interface AiffOptions {
  channels?: number;
  sampleRate?: number;
  sampleSize?: number;
  /** Makes it an AIFF-C. */
  compression?: string;
  /** What the common chunk says of the number of frames. */
  frames?: number;
  /** The sound's bytes as they lie in the file. */
  sound: Uint8Array;
  /** Bytes between the sound chunk's head and the sound. */
  offset?: number;
  /** What the sound chunk's head says of its size, in place of the truth. */
  soundSize?: number;
  /** Whole chunks before the common one, and at the end. */
  first?: readonly Uint8Array[];
  last?: readonly Uint8Array[];
  /** Puts the common chunk behind the sound. */
  commonLast?: boolean;
}

/** The bytes of a whole file. */
export function aiffBytes(options: AiffOptions): Uint8Array {
  const { channels = 2, sampleSize = 16, sound, offset = 0, first = [], last = [] } = options;
  const frameBytes = Math.max(1, Math.ceil(sampleSize / 8) * channels);
  const frames = options.frames ?? Math.floor(sound.length / frameBytes);
  const common = commonChunk({ ...options, frames });
  const body = joined([bigEndian(offset, 4), bigEndian(0, 4), new Uint8Array(offset), sound]);
  const data = aiffChunk('SSND', body, options.soundSize);
  const middle = options.commonLast ? [data, common] : [common, data];
  const form = options.compression === undefined ? 'AIFF' : 'AIFC';
  return aiffForm([...first, ...middle, ...last], form);
}

export function aiffForm(chunks: readonly Uint8Array[], form = 'AIFF'): Uint8Array {
  const body = joined([ascii(form), ...chunks]);
  return joined([ascii('FORM'), bigEndian(body.length, 4), body]);
}

export function commonChunk(options: Omit<AiffOptions, 'sound'> & { frames: number }): Uint8Array {
  const { channels = 2, frames, sampleSize = 16, sampleRate = 44_100, compression } = options;
  const plain = [
    bigEndian(channels, 2),
    bigEndian(frames, 4),
    bigEndian(sampleSize, 2),
    extended(sampleRate),
  ];
  // A name of nothing, padded to an even length.
  const kind = compression === undefined ? [] : [ascii(compression), new Uint8Array(2)];
  return aiffChunk('COMM', joined([...plain, ...kind]));
}

/** One chunk, padded to an even length. */
export function aiffChunk(id: string, body: Uint8Array, size = body.length): Uint8Array {
  return joined([ascii(id), bigEndian(size, 4), body, new Uint8Array(body.length % 2)]);
}

/** A positive number as an 80-bit one: the exponent is found by halving and doubling. */
export function extended(value: number): Uint8Array {
  let exponent = 16_383 + 63;
  let mantissa = value;
  for (; mantissa < 2 ** 63; exponent--) mantissa *= 2;
  return joined([bigEndian(exponent, 2), bigEndian(BigInt(mantissa), 8)]);
}

export function bigEndian(value: number | bigint, length: number): Uint8Array {
  return Uint8Array.from({ length }, (_, at) =>
    Number((BigInt(value) >> BigInt(8 * (length - 1 - at))) & 0xffn),
  );
}
