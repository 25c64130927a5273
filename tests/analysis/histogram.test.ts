import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  COUNTING_CLASSES,
  classOf,
  emptyHistogram,
  fileQuarter,
  LOWEST_CLASS,
} from '../../src/analysis/histogram.js';
import { CLASS_DB, HISTOGRAM_CLASSES } from '../../src/analysis/motion.js';

test('four classes are a factor of two, 1.505 dB each', () => {
  expect(classOf(1)).toBe(0);
  expect(classOf(2)).toBe(4);
  expect(classOf(0.5)).toBe(-4);
  // 20·log10(2)/4, by hand.
  expect(CLASS_DB).toBeWithin(1.50515, 0.000005);
});

test('class c begins at 2^(c/4) and ends before the next, of either sign', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-4, max: 6e4, noNaN: true }), (x) => {
      const c = classOf(x);
      // Where it begins is known as well as f32 knows x.
      expect(x).toBeGreaterThanOrEqual(2 ** (c / 4) * (1 - 1e-7));
      expect(x).toBeLessThan(2 ** ((c + 1) / 4) * (1 + 1e-7));
      expect(classOf(-x)).toBe(c);
    }),
  );
});

test('silence and what is beyond the classes count into the outermost', () => {
  expect(classOf(0)).toBe(LOWEST_CLASS);
  expect(classOf(1e-30)).toBe(LOWEST_CLASS);
  expect(classOf(1e30)).toBe(LOWEST_CLASS + COUNTING_CLASSES - 1);
});

function counted(classes: readonly number[]): Uint32Array {
  const counts = new Uint32Array(COUNTING_CLASSES);
  for (const c of classes) counts.set([(counts[c - LOWEST_CLASS] ?? 0) + 1], c - LOWEST_CLASS);
  return counts;
}

test('a quarter is filed from its loudest class downwards, and touches no other quarter', () => {
  const histogram = emptyHistogram(3);
  fileQuarter(histogram, 1, counted([5, 5, 4, 3, 3, 3, -10]));
  expect([...histogram.topClass]).toEqual([LOWEST_CLASS, 5, LOWEST_CLASS]);
  const row = histogram.counts.subarray(HISTOGRAM_CLASSES, 2 * HISTOGRAM_CLASSES);
  expect([...row.subarray(0, 4)]).toEqual([2, 1, 3, 0]);
  expect(row[15]).toBe(1);
  expect(histogram.counts.reduce((sum, count) => sum + count, 0)).toBe(7);
});

test('what lies lower than the last entry counts into it', () => {
  const histogram = emptyHistogram(1);
  fileQuarter(histogram, 0, counted([10, 10 - 23, 10 - 24, 10 - 60, LOWEST_CLASS]));
  expect(histogram.counts[0]).toBe(1);
  expect(histogram.counts[HISTOGRAM_CLASSES - 1]).toBe(4);
});

test('silence is filed as the lowest class', () => {
  const histogram = emptyHistogram(1);
  fileQuarter(histogram, 0, counted([LOWEST_CLASS, LOWEST_CLASS]));
  expect(histogram.topClass[0]).toBe(LOWEST_CLASS);
  expect(histogram.counts[0]).toBe(2);
});
