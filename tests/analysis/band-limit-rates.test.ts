import { expect, test } from 'vitest';
import { bandLimitOf, isFamilyRate } from '../../src/analysis/band-limit.js';

test.each([
  [44_100, 0, 88_200],
  [88_200, 1, 88_200],
  [176_400, 2, 88_200],
  [48_000, 0, 96_000],
  [96_000, 1, 96_000],
  [192_000, 2, 96_000],
])('%d Hz is halved %d times, and worked on at %d Hz', (rate, halvings, internalRate) => {
  expect(isFamilyRate(rate)).toBe(true);
  expect(bandLimitOf(rate)).toMatchObject({ halvings, internalRate, baseRate: internalRate / 2 });
});

test.each([32_000, 50_000, 44_101])('%d Hz is of neither family', (rate) => {
  expect(isFamilyRate(rate)).toBe(false);
  expect(() => bandLimitOf(rate)).toThrow(RangeError);
});
