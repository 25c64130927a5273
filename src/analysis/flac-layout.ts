import { type FlacBlockHead, readBlockHead } from './flac-block-head.js';
import { crc16 } from './flac-crc.js';
import type { FlacStream } from './flac-stream.js';
import type { ByteSource } from './wav-source.js';

/** How the blocks of a FLAC file lie in it. */
export interface FlacLayout {
  readonly source: ByteSource;
  readonly stream: FlacStream;
  /** The two bytes that every block begins with. */
  readonly sync: Uint8Array;
  /** Frames of a block but the last, where blocks are counted and not their frames. */
  readonly blockFrames: number;
  /** Byte of the first block, and the one after the last that is whole. */
  readonly start: number;
  readonly end: number;
  /** Frames of the whole blocks. */
  readonly frames: number;
}

/** A place where a block begins, and the frame that is its first. */
export interface FlacPlace {
  readonly at: number;
  readonly firstFrame: number;
}

/** First frame of a block. */
export function firstFrameOf(
  { countsFrames, number }: FlacBlockHead,
  { blockFrames }: Pick<FlacLayout, 'blockFrames'>,
): number {
  return countsFrames ? number : number * blockFrames;
}

/**
 * Where a block ends: no head tells it. Another block's head follows it, and the CRC-16 over all of
 * it is 0 there.
 * @param bytes of the file, to its last block's end if `isEnd`
 * @param from where it begins
 * @returns null where the end is not among the bytes, or the block is damaged
 */
export function blockEnd(
  bytes: Buffer,
  from: number,
  head: FlacBlockHead,
  { stream, sync }: Pick<FlacLayout, 'stream' | 'sync'>,
  isEnd: boolean,
): number | null {
  let crc = 0;
  let done = from;
  for (let at = from + head.length; ; at++) {
    at = bytes.indexOf(sync, at);
    if (at === -1) break;
    if (readBlockHead(bytes, at, stream) === null) continue;
    crc = crc16(bytes, done, at, crc);
    done = at;
    if (crc === 0) return at;
  }
  if (!isEnd || bytes.length - from > longestBlock(head.frames, stream)) return null;
  return crc16(bytes, done, bytes.length, crc) === 0 ? bytes.length : null;
}

/**
 * Bytes that no encoder goes beyond for a block: its samples as they are, one bit wider for the
 * difference of the channels, and some for heads.
 */
export function longestBlock(frames: number, { format }: FlacStream): number {
  return 1024 + Math.ceil((frames * format.channels * (format.bitDepth + 1)) / 8);
}
