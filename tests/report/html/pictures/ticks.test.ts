import fc from 'fast-check';
import { expect, test } from 'vitest';
import { roundTicks, timeTicks } from '../../../../src/report/html/page/pictures/paint/ticks.js';

test.each([
  [roundTicks, 0, 100, 5, [0, 20, 40, 60, 80, 100]],
  [roundTicks, -0.004, 0.017, 4, [0, 0.01]],
  [roundTicks, 98, 260, 4, [100, 150, 200, 250]],
  [timeTicks, -1.8, 300, 6, [0, 60, 120, 180, 240, 300]],
  [timeTicks, 61, 64.9, 4, [61, 62, 63, 64]],
  [timeTicks, 0, 7200, 3, [0, 2400, 4800, 7200]],
] as const)('%o from %d to %d, about %d', (ticks, from, to, count, expected) => {
  expect(ticks(from, to, count)).toEqual(expected);
});

test('ticks are round, evenly spaced, within the ends, and not many more than asked for', () => {
  const ends = fc.tuple(
    fc.double({ min: -1e3, max: 1e3, noNaN: true }),
    fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
  );
  fc.assert(
    fc.property(ends, fc.integer({ min: 1, max: 20 }), ([from, length], count) => {
      for (const ticks of [
        roundTicks(from, from + length, count),
        timeTicks(from, from + length, count),
      ]) {
        expect(ticks.length).toBeLessThanOrEqual(count + 1);
        for (const tick of ticks) {
          expect(tick).toBeGreaterThanOrEqual(from - 1e-6);
          expect(tick).toBeLessThanOrEqual(from + length + 1e-6);
        }
        const steps = ticks.slice(1).map((tick, at) => tick - (ticks[at] ?? 0));
        for (const step of steps) expect(step).toBeWithin(steps[0] ?? 0, 1e-9, 1e-9);
      }
    }),
  );
});

test('an axis without length, or of no finite one, has no ticks', () => {
  expect(roundTicks(3, 3, 5)).toEqual([]);
  expect(roundTicks(0, Number.POSITIVE_INFINITY, 5)).toEqual([]);
  expect(timeTicks(3, 3, 5)).toEqual([]);
});
