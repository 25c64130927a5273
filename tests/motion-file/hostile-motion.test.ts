import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { InputError } from '../../src/errors.js';
import { decodeMotion } from '../../src/motion-file/decode-motion.js';
import { encodeMotion } from '../../src/motion-file/encode-motion.js';
import { COLUMNS } from '../../src/motion-file/motion-columns.js';
import { digestOf } from '../../src/motion-file/motion-digest.js';
import { motionHeadSchema } from '../../src/motion-file/motion-head.js';
import { DIGEST_AT, HEAD_AT, HEAD_BYTES_AT } from '../../src/motion-file/motion-layout.js';
import { emptyMotion } from '../support/empty-motion.js';
import { savedMotion } from '../support/saved-motion.js';

const MOTION = emptyMotion(4);
MOTION.approach.forEach((_, bin, row) => {
  row[bin] = Math.sin(bin) / 3;
});
const WHOLE = encodeMotion(savedMotion(MOTION));

/** The code of the refusal; anything but an InputError goes through. */
function refusal(bytes: Uint8Array): string {
  try {
    decodeMotion('x.motion', bytes);
  } catch (error) {
    if (error instanceof InputError && error.path === 'x.motion') return error.code;
    throw error;
  }
  return 'accepted';
}

/** A copy whose checksum is right again, as someone would make it who means harm. */
function sealed(bytes: Uint8Array): Uint8Array {
  const copy = Uint8Array.from(bytes);
  copy.set(digestOf(copy), DIGEST_AT);
  return copy;
}

const view = new DataView(WHOLE.buffer, WHOLE.byteOffset);
const HEAD_BYTES = view.getUint32(HEAD_BYTES_AT, true);
const HEAD: unknown = JSON.parse(
  Buffer.from(WHOLE.subarray(HEAD_AT, HEAD_AT + HEAD_BYTES)).toString(),
);

/** A file with another head, or other columns, and everything else right. */
function rebuilt(
  change: object,
  columns: Uint8Array = WHOLE.subarray(HEAD_AT + HEAD_BYTES),
): Uint8Array {
  const head = Buffer.from(JSON.stringify({ ...motionHeadSchema.parse(HEAD), ...change }));
  const bytes = Uint8Array.from(Buffer.concat([WHOLE.subarray(0, HEAD_AT), head, columns]));
  new DataView(bytes.buffer).setUint32(HEAD_BYTES_AT, head.length, true);
  return sealed(bytes);
}

/** A file whose first column is packed from these bytes. */
function withFirstColumn(planes: Uint8Array): Uint8Array {
  const { columns } = motionHeadSchema.parse(HEAD);
  const [first, ...others] = columns;
  const packed = deflateSync(planes);
  const rest = WHOLE.subarray(HEAD_AT + HEAD_BYTES + (first?.bytes ?? 0));
  return rebuilt(
    { columns: [{ name: 'approach', bytes: packed.length }, ...others] },
    Buffer.concat([packed, rest]),
  );
}

describe('damage', () => {
  test('the whole file is accepted, also after it was taken apart and put together', () => {
    expect(refusal(WHOLE)).toBe('accepted');
    expect(rebuilt({})).toEqual(WHOLE);
  });

  test('no bit can turn: every single one is noticed', () => {
    const accepted: number[] = [];
    const copy = Uint8Array.from(WHOLE);
    const codes = new Set<string>();
    for (let bit = 0; bit < 8 * WHOLE.length; bit++) {
      copy[bit >> 3] = (WHOLE[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      const code = refusal(copy);
      codes.add(code);
      if (code === 'accepted') accepted.push(bit);
      copy[bit >> 3] = WHOLE[bit >> 3] ?? 0;
    }
    expect(accepted).toEqual([]);
    expect([...codes].sort()).toEqual(['motion-damaged', 'motion-version', 'not-motion']);
  });

  test('no byte can be missing, and none be added', () => {
    const codes = new Set<string>();
    for (let length = 0; length < WHOLE.length; length += 7) {
      codes.add(refusal(WHOLE.subarray(0, length)));
    }
    codes.add(refusal(Buffer.concat([WHOLE, Uint8Array.of(0)])));
    expect([...codes].sort()).toEqual(['motion-damaged', 'not-motion']);
  });

  test('any bytes at all are refused', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(refusal(bytes)).toBe('not-motion');
        const begun = Buffer.concat([WHOLE.subarray(0, 16), bytes]);
        expect(refusal(begun)).toBe('motion-damaged');
      }),
      { numRuns: 200 },
    );
  });
});

describe('malice: the checksum holds', () => {
  test('bytes changed anywhere are refused, or leave a summary that is whole and finite', () => {
    const place = fc.nat(WHOLE.length - 1).filter((at) => at < DIGEST_AT || at >= HEAD_AT);
    const changes = fc.array(fc.tuple(place, fc.integer({ min: 0, max: 255 })), { minLength: 1 });
    let accepted = 0;
    fc.assert(
      fc.property(changes, (changed) => {
        const copy = Uint8Array.from(WHOLE);
        for (const [at, byte] of changed) copy[at] = byte;
        const bytes = sealed(copy);
        if (refusal(bytes) !== 'accepted') return;
        accepted += 1;
        const { motion } = decodeMotion('', bytes);
        for (const { of, perQuarter } of COLUMNS) {
          expect(of(motion)).toHaveLength(motion.quarterCount * perQuarter);
          expect(of(motion).every(Number.isFinite)).toBe(true);
        }
      }),
      { numRuns: 3000 },
    );
    expect(accepted).toBeGreaterThan(0);
  });

  test.each([
    ['a head longer than the file', () => withHeadBytes(2 ** 16)],
    ['a head of 4 GiB', () => withHeadBytes(2 ** 32 - 1)],
    ['no head', () => withHeadBytes(0)],
    ['a head that is no JSON', () => withHeadBytes(HEAD_BYTES - 1)],
    ['an unknown field', () => rebuilt({ more: 1 })],
    ['quarters that the length does not make', () => rebuilt({ quarterCount: 20 })],
    ['a length that the quarters do not make', () => rebuilt({ durationSeconds: 40 })],
    ['a million turns', () => rebuilt({ quarterCount: 4e6 + 4, durationSeconds: 1.8e6 })],
    [
      'as many turns as are allowed',
      () => rebuilt({ quarterCount: 2 ** 17, durationSeconds: 1.8 * 32_767 }),
    ],
    ['no turn at all', () => rebuilt({ quarterCount: 0, durationSeconds: 0 })],
    [
      'a turn that the speed does not make',
      () => rebuilt({ turnSeconds: 3.6, durationSeconds: 2 * MOTION.durationSeconds }),
    ],
    ['a turn of no length', () => rebuilt({ turnSeconds: 1e-320 })],
    ['no column', () => rebuilt({ columns: [] })],
    ['columns in another order', () => rebuilt({ columns: columnsOf().reverse() })],
    ['a column of 2^28 bytes', () => rebuilt({ columns: withBytes(2 ** 28) })],
    ['a column of 2^53 bytes', () => rebuilt({ columns: withBytes(2 ** 53) })],
    ['a column of -1 bytes', () => rebuilt({ columns: withBytes(-1) })],
    ['a column that is a byte short', () => rebuilt({ columns: withBytes((b) => b - 1) })],
    ['a column with one entry less', () => withFirstColumn(planes().subarray(8))],
    ['a column that unpacks to 64 MiB', () => withFirstColumn(new Uint8Array(2 ** 26))],
    ['not a number', () => withFirstColumn(planes(Number.NaN))],
    ['an infinite number', () => withFirstColumn(planes(Number.NEGATIVE_INFINITY))],
    ['a number beyond reason', () => withFirstColumn(planes(1e61))],
    ['an infinite rate', () => withText('"sampleRate":44100', '"sampleRate":1e999')],
    ['a balance that is text', () => withText('"channelBalanceDb":0', '"channelBalanceDb":""')],
  ])('%s is bad-motion', (_, bytes) => {
    expect(refusal(bytes())).toBe('bad-motion');
  });

  test('bytes after the last column are bad-motion', () => {
    const more = Buffer.concat([WHOLE, Uint8Array.of(0)]);
    expect(refusal(sealed(more))).toBe('bad-motion');
  });
});

function withHeadBytes(count: number): Uint8Array {
  const copy = Uint8Array.from(WHOLE);
  new DataView(copy.buffer).setUint32(HEAD_BYTES_AT, count, true);
  return sealed(copy);
}

function columnsOf() {
  return motionHeadSchema.parse(HEAD).columns;
}

function withBytes(bytes: number | ((length: number) => number)) {
  return columnsOf().map((column, index) => {
    if (index > 0) return column;
    return { ...column, bytes: typeof bytes === 'number' ? bytes : bytes(column.bytes) };
  });
}

/** The first column's byte planes, its first entry being this. */
function planes(first = 0): Uint8Array {
  const entries = MOTION.approach.length;
  const bytes = new Uint8Array(8 * entries);
  const word = new DataView(new ArrayBuffer(8));
  word.setFloat64(0, first, true);
  for (let byte = 0; byte < 8; byte++) bytes[byte * entries] = word.getUint8(byte);
  return bytes;
}

function withText(from: string, to: string): Uint8Array {
  const text = Buffer.from(WHOLE).toString('latin1');
  expect(text).toContain(from);
  const bytes = Uint8Array.from(Buffer.from(text.replace(from, to), 'latin1'));
  new DataView(bytes.buffer).setUint32(HEAD_BYTES_AT, HEAD_BYTES + to.length - from.length, true);
  return sealed(bytes);
}
