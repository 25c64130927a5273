import { joined } from '../../support/wav-writer.js';
import { type ByteOrder, readNumber } from './numbers.js';

/** A stretch of a file that moves as a whole: a chunk with its head and padding, or a FLAC block. */
export interface Piece {
  readonly id: string;
  readonly at: number;
  /** Byte of its first content. */
  readonly body: number;
  /** The one after its last, at most the file's. */
  readonly end: number;
}

/** A form of chunks as their heads have it. */
export interface Form {
  readonly bytes: Uint8Array;
  readonly order: ByteOrder;
  readonly chunks: readonly Piece[];
}

/** The order in which the numbers of a form of chunks lie; null for what is no such form. */
export function orderOf(bytes: Uint8Array): ByteOrder | null {
  const id = lettersAt(bytes, 0);
  if (id === 'FORM') return 'big';
  return id === 'RIFF' || id === 'RF64' || id === 'BW64' ? 'little' : null;
}

/** The chunks of a form as their heads have them, clipped at the end of the file. */
export function chunksOf(bytes: Uint8Array, order: ByteOrder): Piece[] {
  const pieces: Piece[] = [];
  for (let at = 12; at + 8 <= bytes.length; ) {
    const size = Number(readNumber(bytes, { at: at + 4, width: 4, order }));
    const end = Math.min(bytes.length, at + 8 + size + (size % 2));
    pieces.push({ id: lettersAt(bytes, at), at, body: at + 8, end });
    at = end;
  }
  return pieces;
}

export function lettersAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

/** The file with `put` in place of the bytes from `from` to `until`. */
export function replaced(
  bytes: Uint8Array,
  from: number,
  until: number,
  ...put: readonly Uint8Array[]
): Uint8Array {
  return joined([bytes.subarray(0, from), ...put, bytes.subarray(until)]);
}
