import { crc8 } from './flac-crc.js';
import type { FlacStream } from './flac-stream.js';

/** The head of a block of samples ("frame" in FLAC; elsewhere here a frame is one of each channel). */
export interface FlacBlockHead {
  /** Bytes of the head with its CRC. */
  readonly length: number;
  /** Number of the block, or of its first frame where blocks differ in length. */
  readonly number: number;
  readonly countsFrames: boolean;
  /** Frames in the block. */
  readonly frames: number;
}

/** Second byte where heads count the blocks, all but the last of one length, and where frames. */
export const COUNTS_BLOCKS = 0xf8;
const COUNTS_FRAMES = 0xf9;
/** Of a block. */
export const MOST_FRAMES = 65_535;
/** Bytes of the longest head. */
export const LONGEST_HEAD = 16;

const RATE_OF_CODE: ReadonlyMap<number, number> = new Map([
  [1, 88_200],
  [2, 176_400],
  [3, 192_000],
  [4, 8000],
  [5, 16_000],
  [6, 22_050],
  [7, 24_000],
  [8, 32_000],
  [9, 44_100],
  [10, 48_000],
  [11, 96_000],
]);
const BITS_OF_CODE: ReadonlyMap<number, number> = new Map([
  [1, 8],
  [2, 12],
  [4, 16],
  [5, 20],
  [6, 24],
]);

/**
 * Reads a block's head.
 * @returns null if there is none, if its CRC-8 is wrong, or if its rate, channels or bits are not
 *   those of the stream
 * Source: RFC 9639, 9.1.
 */
export function readBlockHead(
  bytes: Uint8Array,
  at: number,
  { format }: FlacStream,
): FlacBlockHead | null {
  const [sync, second, sizes, layout] = bytes.subarray(at, at + 4);
  if (sync !== 0xff || (second !== COUNTS_BLOCKS && second !== COUNTS_FRAMES)) return null;
  if (sizes === undefined || layout === undefined || layout % 2 !== 0) return null;
  const channels = layout >>> 4;
  if (channels > 10 || (channels < 8 ? channels + 1 : 2) !== format.channels) return null;
  const bitsCode = (layout >>> 1) & 7;
  if (bitsCode !== 0 && BITS_OF_CODE.get(bitsCode) !== format.bitDepth) return null;
  const number = readNumber(bytes, at + 4);
  if (number === null) return null;
  const afterNumber = at + 4 + number.length;
  const length = readLength(bytes, afterNumber, sizes >>> 4);
  if (length === null) return null;
  const rate = readRate(bytes, afterNumber + length.length, sizes % 16, format.sampleRate);
  if (rate === null || rate.value !== format.sampleRate) return null;
  const end = afterNumber + length.length + rate.length + 1;
  if (end > bytes.length || crc8(bytes, at, end) !== 0) return null;
  return {
    length: end - at,
    number: number.value,
    countsFrames: second === COUNTS_FRAMES,
    frames: length.value,
  };
}

/** A value and the bytes it takes. */
interface Coded {
  readonly value: number;
  readonly length: number;
}

/** Up to 36 bits, coded like a letter of UTF-8 in up to 7 bytes. */
function readNumber(bytes: Uint8Array, at: number): Coded | null {
  const first = bytes[at];
  if (first === undefined) return null;
  if (first < 0x80) return { value: first, length: 1 };
  const length = Math.clz32(~(first << 24));
  if (length < 2 || length > 7) return null;
  let value = first % 2 ** (7 - length);
  for (let more = 1; more < length; more++) {
    const byte = bytes[at + more];
    if (byte === undefined || byte >>> 6 !== 2) return null;
    value = value * 64 + (byte % 64);
  }
  return { value, length };
}

function readLength(bytes: Uint8Array, at: number, code: number): Coded | null {
  if (code === 0) return null;
  if (code === 1) return { value: 192, length: 0 };
  if (code <= 5) return { value: 144 * 2 ** code, length: 0 };
  if (code >= 8) return { value: 2 ** code, length: 0 };
  const length = code - 5;
  const written = readBytes(bytes, at, length);
  return written === null || written === MOST_FRAMES ? null : { value: written + 1, length };
}

function readRate(bytes: Uint8Array, at: number, code: number, ofStream: number): Coded | null {
  if (code === 0) return { value: ofStream, length: 0 };
  if (code === 15) return null;
  if (code < 12) return { value: RATE_OF_CODE.get(code) ?? 0, length: 0 };
  const length = code === 12 ? 1 : 2;
  const written = readBytes(bytes, at, length);
  if (written === null) return null;
  const unit = code === 12 ? 1000 : code === 13 ? 1 : 10;
  return { value: written * unit, length };
}

/** One or two bytes, big endian. */
function readBytes(bytes: Uint8Array, at: number, length: number): number | null {
  const [high, low] = bytes.subarray(at, at + length);
  if (high === undefined) return null;
  if (length === 1) return high;
  return low === undefined ? null : 256 * high + low;
}
