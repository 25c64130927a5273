// Source: ITU-R BS.1770-4, annex 1, tables 1 and 2: the filters' coefficients at 48 kHz (from
// memory), to the digits they are printed with.
import { describe, expect, test } from 'vitest';
import type { Biquad } from '../../src/analysis/biquad.js';
import { divide, multiply, polynomial, unitPhasor } from '../../src/analysis/complex.js';
import { designKWeighting } from '../../src/analysis/k-weighting.js';

const TABLE_1: Biquad = {
  b0: 1.53512485958697,
  b1: -2.69169618940638,
  b2: 1.19839281085285,
  a1: -1.69065929318241,
  a2: 0.73248077421585,
};
const TABLE_2: Biquad = {
  b0: 1,
  b1: -2,
  b2: 1,
  a1: -1.99004745483398,
  a2: 0.99007225036621,
};

const row = ({ b0, b1, b2, a1, a2 }: Biquad): number[] => [b0, b1, b2, a1, a2];
const [shelf, lowCut] = designKWeighting(48_000);

test('the shelf at 48 kHz is table 1', () => {
  expect(row(shelf)).toBeWithin(row(TABLE_1), 1e-13);
});

test('the low cut at 48 kHz is table 2', () => {
  expect(row(lowCut)).toBeWithin(row(TABLE_2), 1e-13);
});

function gainDb(sections: readonly Biquad[], hz: number, rate: number): number {
  const z1 = unitPhasor((-2 * Math.PI * hz) / rate);
  const value = sections
    .map(({ b0, b1, b2, a1, a2 }) =>
      divide(polynomial([b0, b1, b2], z1), polynomial([1, a1, a2], z1)),
    )
    .reduce(multiply);
  return 20 * Math.log10(Math.hypot(value.re, value.im));
}

describe('at 44.1 kHz the weighting is that of the tables', () => {
  const others = designKWeighting(44_100);

  // The two bilinear transforms part towards half the rate: 0.05 dB at 10 kHz.
  test.each([
    [20, 0.005],
    [100, 0.005],
    [997, 0.005],
    [3000, 0.02],
    [10_000, 0.05],
  ])('%i Hz within %f dB', (hz, db) => {
    expect(gainDb(others, hz, 44_100)).toBeWithin(gainDb([TABLE_1, TABLE_2], hz, 48_000), db);
  });
});

// Source: the same annex: −0.691 makes a full-scale 997 Hz sine in one channel −3.01 LKFS.
test('997 Hz is weighted by 0.691 dB', () => {
  expect(gainDb([shelf, lowCut], 997, 48_000)).toBeWithin(0.691, 0.002);
});
