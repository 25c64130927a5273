import { readBlockHead } from './flac-block-head.js';
import { crc8, crc16 } from './flac-crc.js';
import type { FlacStream } from './flac-stream.js';

/** Codes of a rate, any that takes no further bytes, and of lengths of a sample. */
const SOME_RATE = 9;
const CODE_OF_BITS = { 8: 1, 16: 4, 24: 6, 32: 0, 64: 0 };

/**
 * A block that tells its rate and bits itself. It may leave them to STREAMINFO, of which the decoder
 * is not told: what gives no samples it does not survive. The rate makes no difference to it.
 * @param block to its last byte
 * Source: RFC 9639, 9.1.
 */
export function toldBlock(block: Uint8Array, stream: FlacStream): Uint8Array {
  const [, , sizes = 0, layout = 0] = block;
  const [rate, bits] = [sizes % 16, (layout >>> 1) % 8];
  const head = rate === 0 || bits === 0 ? readBlockHead(block, 0, stream) : null;
  if (head === null) return block;
  const told = Uint8Array.from(block);
  if (rate === 0) told[2] = sizes + SOME_RATE;
  if (bits === 0) told[3] = layout + 2 * CODE_OF_BITS[stream.format.bitDepth];
  told[head.length - 1] = crc8(told, 0, head.length - 1);
  const crc = crc16(told, 0, told.length - 2);
  told[told.length - 2] = crc >>> 8;
  told[told.length - 1] = crc;
  return told;
}
