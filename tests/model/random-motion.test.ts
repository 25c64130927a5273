import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BINS_PER_QUARTER, HISTOGRAM_CLASSES } from '../../src/analysis/motion.js';
import { randomMotion } from '../support/random-motion.js';

const BINS_PER_TURN = 4 * BINS_PER_QUARTER;

describe('a random motion summary', () => {
  test('closes in by no more than its walls move, and never less loosely than on time', () => {
    fc.assert(
      fc.property(randomMotion(), ({ approach, approachLoose, outward, inward }) => {
        for (const [bin, loose] of approachLoose.entries()) {
          const furthest = outward[bin]! + (inward[bin - BINS_PER_TURN] ?? 0);
          expect(approach[bin]).toBeLessThanOrEqual(loose);
          expect(loose).toBeLessThanOrEqual(furthest);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('moves in the program only, and for a turn longer in what it faces', () => {
    fc.assert(
      fc.property(randomMotion(), ({ durationSeconds, turnSeconds, quarterCount, ...rows }) => {
        const end = Math.ceil((durationSeconds / turnSeconds) * BINS_PER_TURN - 1e-9);
        expect(quarterCount * BINS_PER_QUARTER).toBe(rows.approach.length);
        expect(end).toBeLessThanOrEqual(rows.lift.length - BINS_PER_TURN);
        expect(rows.lift.subarray(end).every((value) => value === 0)).toBe(true);
        expect(rows.outward.subarray(end).every((value) => value === 0)).toBe(true);
        expect(rows.approach.subarray(end + BINS_PER_TURN).every((value) => value === 0)).toBe(
          true,
        );
      }),
      { numRuns: 30 },
    );
  });

  test('has its largest sample in the highest class of its histogram', () => {
    fc.assert(
      fc.property(randomMotion(), ({ left, quarterCount }) => {
        const { topClass, counts } = left.accelerationHistogram;
        for (let quarter = 0; quarter < quarterCount; quarter++) {
          const peak = left.accelerationPeak[quarter]!;
          if (peak === 0) continue;
          expect(topClass[quarter]).toBe(Math.floor(4 * Math.log2(peak)));
          expect(counts[quarter * HISTOGRAM_CLASSES]).toBeGreaterThan(0);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('is silent in some places and moves in others', () => {
    const samples = fc.sample(randomMotion(), { numRuns: 50, seed: 1 });
    expect(samples.some(({ lateral }) => lateral.every((value) => value === 0))).toBe(true);
    expect(samples.filter(({ lateral }) => lateral.some((v) => v > 1e-5)).length).toBeGreaterThan(
      9,
    );
  });
});
