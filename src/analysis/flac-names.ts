import { type ByteSource, readBytes } from './wav-source.js';

const HEAD_BYTES = 10;
const TAIL_BYTES = 128;
const HAS_FOOTER = 0x10;

/**
 * Byte of a FLAC file's marker: names after another custom (ID3v2) may lie before it.
 * Source: ID3 tag version 2.4.0, 3.1 (from memory).
 */
export async function startOfSound(source: ByteSource): Promise<number> {
  const head = await readBytes(source, 0, HEAD_BYTES);
  if (head.length < HEAD_BYTES || textAt(head, 3) !== 'ID3') return 0;
  const [flags = 0, ...sizes] = head.subarray(5);
  // Seven bits a byte.
  const size = sizes.reduce((sum, byte) => 128 * sum + (byte % 128), 0);
  return HEAD_BYTES + size + ((flags & HAS_FOOTER) === 0 ? 0 : HEAD_BYTES);
}

/**
 * Byte after a FLAC file's last block, if it is whole: names of 128 bytes (ID3v1) may follow it.
 * Source: ID3v1 (from memory).
 */
export async function endOfSound(source: ByteSource): Promise<number> {
  const from = source.size - TAIL_BYTES;
  const tail = from < 0 ? new Uint8Array(0) : await readBytes(source, from, TAIL_BYTES);
  return textAt(tail, 3) === 'TAG' ? from : source.size;
}

function textAt(bytes: Uint8Array, length: number): string {
  return String.fromCharCode(...bytes.subarray(0, length));
}
