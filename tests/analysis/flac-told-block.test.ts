// RFC 9639, 9.1: a block may leave its rate and the bits of a sample to STREAMINFO.
import { expect, test } from 'vitest';
import { crc8, crc16 } from '../../src/analysis/flac-crc.js';
import { toldBlock } from '../../src/analysis/flac-told-block.js';

const FORMAT = { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: 44_100 } as const;
const STREAM = { format: FORMAT, frames: 0, md5: null };

/** A block of 16 bits of content; rate and bits as codes, 0 where it leaves them out. */
function blockWith(rate: number, bits: number): Uint8Array {
  const block = Uint8Array.of(0xff, 0xf8, 0xc0 + rate, 0x10 + 2 * bits, 7, 0, 0xab, 0xcd, 0, 0);
  block[5] = crc8(block, 0, 5);
  const crc = crc16(block, 0, 8);
  block.set([crc >>> 8, crc % 256], 8);
  return block;
}

test.each([
  [0, 0],
  [0, 6],
  [9, 0],
])('a block that tells rate code %d and bits code %d tells both afterwards', (rate, bits) => {
  const told = toldBlock(blockWith(rate, bits), STREAM);
  // 44.1 kHz and 24 bits: with the right sums, nothing else changed.
  expect(told).toEqual(blockWith(9, 6));
});

test('a block that tells both, and what is none, stays as it is', () => {
  const block = blockWith(9, 6);
  expect(toldBlock(block, STREAM)).toBe(block);
  const spoilt = blockWith(0, 0);
  spoilt[4] = 8;
  expect(toldBlock(spoilt, STREAM)).toBe(spoilt);
});
