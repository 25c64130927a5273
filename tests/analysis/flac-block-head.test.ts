// The codes of RFC 9639, 9.1.1 to 9.1.8, from the tables of the text.
import { describe, expect, test } from 'vitest';
import { readBlockHead } from '../../src/analysis/flac-block-head.js';
import { crc8 } from '../../src/analysis/flac-crc.js';

/** A head with its CRC-8: fixed block size, two channels, 16 bits, unless said otherwise. */
function headOf({
  second = 0xf8,
  size = 12,
  rate = 9,
  layout = 0x18,
  rest = [0],
}: {
  readonly second?: number;
  readonly size?: number;
  readonly rate?: number;
  readonly layout?: number;
  /** The coded number, then what size and rate leave to the end. */
  readonly rest?: readonly number[];
}): Uint8Array {
  const bytes = Uint8Array.of(0xff, second, 16 * size + rate, layout, ...rest, 0);
  bytes[bytes.length - 1] = crc8(bytes, 0, bytes.length - 1);
  return bytes;
}

/** Of a stream of two channels and 16 bits. */
function read(bytes: Uint8Array, sampleRate = 44_100) {
  const format = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate } as const;
  return readBlockHead(bytes, 0, { format, frames: 0, md5: null });
}

describe('the head of a block', () => {
  test.each([
    [1, [0], 192],
    [2, [0], 576],
    [5, [0], 4608],
    [6, [0, 99], 100],
    [7, [0, 1, 0], 257],
    [8, [0], 256],
    [15, [0], 32_768],
  ] as const)('of size code %d has its frames', (size, rest, frames) => {
    expect(read(headOf({ size, rest }))).toMatchObject({ frames, number: 0, countsFrames: false });
  });

  test.each([
    [0, [0], 44_100],
    [4, [0], 8000],
    [11, [0], 96_000],
    // In kHz, in Hz, in tens of Hz.
    [12, [0, 48], 48_000],
    [13, [0, 0xac, 0x44], 44_100],
    [14, [0, 0x11, 0x3a], 44_100],
  ] as const)('of rate code %d is of a stream of that rate only', (rate, rest, sampleRate) => {
    const bytes = headOf({ rate, rest });
    expect(read(bytes, sampleRate)).toMatchObject({ length: bytes.length });
    expect(read(bytes, 50_000) === null).toBe(rate !== 0);
  });

  test.each([
    [[0x7f], 127],
    [[0xc2, 0x80], 128],
    [[0xef, 0xbf, 0xbf], 65_535],
    [[0xfe, 0xbf, 0xbf, 0xbf, 0xbf, 0xbf, 0xbf], 2 ** 36 - 1],
  ] as const)('has its number from the bytes %j', (rest, number) => {
    expect(read(headOf({ second: 0xf9, rest }))).toMatchObject({ number, countsFrames: true });
  });

  test.each([
    ['another second byte', headOf({ second: 0xfa })],
    ['a reserved size', headOf({ size: 0 })],
    ['more frames than a block may have', headOf({ size: 7, rest: [0, 0xff, 0xff] })],
    ['no bytes of its size', Uint8Array.of(0xff, 0xf8, 0x69, 0x18, 0)],
    ['half of the bytes of its size', Uint8Array.of(0xff, 0xf8, 0x79, 0x18, 0, 1)],
    ['a forbidden rate', headOf({ rate: 15 })],
    ['no bytes of its rate', Uint8Array.of(0xff, 0xf8, 0xcc, 0x18, 0)],
    ['another rate', headOf({ rate: 10 })],
    ['other bits', headOf({ layout: 0x1c })],
    ['one channel', headOf({ layout: 0x08 })],
    ['reserved channels', headOf({ layout: 0xb8 })],
    ['a reserved last bit', headOf({ layout: 0x19 })],
    ['no number', Uint8Array.of(0xff, 0xf8, 0xc9, 0x18)],
    ['a number that goes on from nowhere', headOf({ rest: [0x80] })],
    ['a number of eight bytes', headOf({ rest: [0xff, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80, 0x80] })],
    ['a number that breaks off', headOf({ rest: [0xc2, 0x00] })],
    ['a wrong CRC', Uint8Array.from(headOf({}), (byte, at) => (at === 5 ? byte ^ 1 : byte))],
    ['no CRC', headOf({}).subarray(0, 5)],
    ['no layout', Uint8Array.of(0xff, 0xf8, 0xc9)],
    ['no sync', Uint8Array.of(0xfe, 0xf8, 0xc9, 0x18, 0, 0)],
  ])('is none with %s', (_, bytes) => {
    expect(read(bytes)).toBeNull();
  });
});
