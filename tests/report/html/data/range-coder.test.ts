import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { integerCoder } from '../../../../src/report/html/data/integer-coder.js';
import {
  type BitCoder,
  chances,
  rangeDecoder,
  rangeEncoder,
} from '../../../../src/report/html/data/range-coder.js';
import { seeded } from '../../../support/signals.js';

const MOST = 2 ** 31 - 1;
const INTEGERS = fc.array(
  fc.tuple(
    fc.nat(3),
    fc.oneof(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -MOST, max: MOST })),
  ),
  { maxLength: 300 },
);

function written(code: (coder: BitCoder) => void): Uint8Array {
  const coder = rangeEncoder();
  code(coder);
  return coder.finish();
}

/** Bytes of so many bits of which a share is 1, and what they come back as. */
function bitsThrough(share: number, count: number) {
  const next = seeded(3);
  const bits = Array.from({ length: count }, () => (next() < share ? 1 : 0));
  const bytes = written((coder) => {
    const learning = chances(1);
    for (const bit of bits) coder.learned(learning, 0, bit);
  });
  const coder = rangeDecoder(bytes);
  const learning = chances(1);
  const back = bits.map(() => coder.learned(learning, 0, 0));
  return { bits, bytes, back };
}

/** Source: Shannon, A Mathematical Theory of Communication, 1948, theorem 9. */
function entropy(share: number): number {
  return -share * Math.log2(share) - (1 - share) * Math.log2(1 - share);
}

describe('the range coder', () => {
  it('gives integers back as they were, in any context', () => {
    const property = (integers: readonly (readonly [number, number])[]) => {
      const bytes = written((coder) => {
        const code = integerCoder(coder, 4);
        for (const [context, value] of integers) code(context, value);
      });
      const code = integerCoder(rangeDecoder(bytes), 4);
      expect(integers.map(([context]) => code(context, 0))).toEqual(
        integers.map(([, value]) => value),
      );
    };
    fc.assert(fc.property(INTEGERS, property), { numRuns: 300 });
  });

  it.for([0.5, 0.2, 0.05, 0.01])('takes within 3 %% of what Shannon allows, %d ones', (share) => {
    const count = 100_000;
    const { bits, bytes, back } = bitsThrough(share, count);
    // So many that carries run through bytes of 255.
    expect(back).toEqual(bits);
    const least = (entropy(share) * count) / 8;
    expect(bytes.length).toBeWithin(least, 0, 0.03);
  });

  it('breaks off loudly where data are missing', () => {
    const { bytes } = bitsThrough(0.5, 1000);
    const coder = rangeDecoder(bytes.slice(0, 100));
    const learning = chances(1);
    expect(() => {
      for (let at = 0; at < 1000; at++) coder.learned(learning, 0, 0);
    }).toThrow(RangeError);
  });
});
