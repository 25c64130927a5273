import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crc8, crc16 } from '../../src/analysis/flac-crc.js';
import { crcOf } from '../support/flac-writer.js';
import { ascii } from '../support/wav-writer.js';

// Source: check values of CRC-8/SMBUS and CRC-16/UMTS, the catalogues' names for the polynomials of
// RFC 9639, 9.1.8 and 9.3 (from memory).
test('the checksums of "123456789" are those of the catalogues', () => {
  expect(crc8(ascii('123456789'), 0, 9)).toBe(0xf4);
  expect(crc16(ascii('123456789'), 0, 9)).toBe(0xfee8);
});

test('over any stretch, in any pieces, they are what long division gives', () => {
  const inputs = fc.tuple(fc.uint8Array({ maxLength: 100 }), fc.nat(100), fc.nat(100));
  fc.assert(
    fc.property(inputs, ([bytes, one, other]) => {
      const [from, middle] = [Math.min(one, bytes.length), Math.min(other, bytes.length)].sort(
        (a, b) => a - b,
      );
      if (from === undefined || middle === undefined) throw new Error('two ends');
      const stretch = bytes.subarray(from);
      const first = crc16(bytes, from, middle);
      expect(crc16(bytes, middle, bytes.length, first)).toBe(crcOf(stretch, 16, 0x8005));
      expect(crc8(bytes, from, bytes.length)).toBe(crcOf(stretch, 8, 0x07));
    }),
    { numRuns: 300 },
  );
});
