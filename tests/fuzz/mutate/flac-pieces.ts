import { crc8, crc16 } from '../../../src/analysis/flac-crc.js';
import { readNumber } from './numbers.js';
import { lettersAt, type Piece } from './pieces.js';

/** A FLAC file as its heads have it. */
export interface FlacForm {
  readonly bytes: Uint8Array;
  /** Byte of the marker. */
  readonly marker: number;
  readonly metadata: readonly Piece[];
  /** What begins like a block of sound, to where the next one does. */
  readonly blocks: readonly Piece[];
}

/** Bytes of a block's head that a number and a length may make it. */
const LONGEST_HEAD = 16;

/** null for what has no marker. */
export function flacForm(bytes: Uint8Array): FlacForm | null {
  const marker = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).indexOf('fLaC');
  if (marker < 0) return null;
  const metadata: Piece[] = [];
  let at = marker + 4;
  for (let isLast = false; !isLast && at + 4 <= bytes.length; ) {
    isLast = (bytes[at] ?? 0) >= 0x80;
    const size = Number(readNumber(bytes, { at: at + 1, width: 3, order: 'big' }));
    const end = Math.min(bytes.length, at + 4 + size);
    metadata.push({ id: lettersAt(bytes, at), at, body: at + 4, end });
    at = end;
  }
  return { bytes, marker, metadata, blocks: blocksFrom(bytes, at) };
}

function blocksFrom(bytes: Uint8Array, from: number): Piece[] {
  const starts: { at: number; body: number }[] = [];
  for (let at = from; at + 6 < bytes.length; at++) {
    if (bytes[at] !== 0xff || ((bytes[at + 1] ?? 0) & 0xfe) !== 0xf8) continue;
    const body = headEnd(bytes, at);
    if (body !== null) starts.push({ at, body });
  }
  return starts.map(({ at, body }, index) => {
    return { id: 'block', at, body, end: starts[index + 1]?.at ?? bytes.length };
  });
}

/** Behind the byte at which the CRC-8 over all before it is right. */
function headEnd(bytes: Uint8Array, at: number): number | null {
  for (let length = 6; length <= LONGEST_HEAD; length++) {
    if (crc8(bytes, at, at + length) === 0) return at + length;
  }
  return null;
}

/** A block, to its last byte, with right checksums of head and whole. */
export function sealedBlock(block: Uint8Array, headBytes: number): Uint8Array {
  const sealed = Uint8Array.from(block);
  if (sealed.length < headBytes + 2) return sealed;
  sealed[headBytes - 1] = crc8(sealed, 0, headBytes - 1);
  const crc = crc16(sealed, 0, sealed.length - 2);
  sealed[sealed.length - 2] = crc >> 8;
  sealed[sealed.length - 1] = crc;
  return sealed;
}
