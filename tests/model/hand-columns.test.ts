import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { handColumn, type Step } from '../../src/model/hand-columns.js';

/** Four quarters of silence, eight of the program, four of silence; a quarter is half a second. */
const GRID = { lead: 4, count: 16, quarterSeconds: 0.5 };

function column(steps: readonly Step[]): number[] {
  return Array.from(handColumn(GRID, steps, 1));
}

describe('what is set by hand from a time on', () => {
  const repeat = (value: number, times: number) => Array.from({ length: times }, () => value);

  test.each([
    ['nothing', [], repeat(1, 16)],
    ['from the first sample: in the silent turns before it too', [[0, 3]], repeat(3, 16)],
    ['on a boundary', [[1, 3]], [...repeat(1, 6), ...repeat(3, 10)]],
    ['up inside a quarter: in all of it', [[1.2, 3]], [...repeat(1, 6), ...repeat(3, 10)]],
    ['down inside a quarter: after it', [[1.2, 0.5]], [...repeat(1, 7), ...repeat(0.5, 9)]],
    [
      'up and down inside one quarter: the largest of all',
      [
        [1.2, 3],
        [1.3, 0.5],
      ],
      [...repeat(1, 6), 3, ...repeat(0.5, 9)],
    ],
    ['after the end', [[99, 3]], repeat(1, 16)],
  ] as const)('%s', (_, steps, expected) => {
    expect(column(steps.map(([fromSeconds, value]) => ({ fromSeconds, value })))).toEqual(expected);
  });

  test('is never less than what holds at any moment of the quarter, and is held by one', () => {
    const step = fc.record({
      fromSeconds: fc.integer({ min: 0, max: 80 }).map((tenths) => tenths / 10),
      value: fc.integer({ min: 1, max: 9 }),
    });
    const ascending = fc
      .array(step, { maxLength: 6 })
      .map((steps) => steps.toSorted((one, other) => one.fromSeconds - other.fromSeconds));
    fc.assert(
      fc.property(ascending, (steps) => {
        const held = (at: number) =>
          steps.findLast(({ fromSeconds }) => fromSeconds <= at)?.value ?? 1;
        for (const [quarter, value] of column(steps).entries()) {
          const from = Math.max(0, (quarter - GRID.lead) * 0.5);
          const until = Math.max(from, (quarter - GRID.lead + 1) * 0.5);
          const inside = steps.filter(({ fromSeconds: at }) => at > from && at < until - 1e-9);
          const values = [held(from), ...inside.map((each) => each.value)];
          expect(value).toBe(Math.max(...values));
        }
      }),
    );
  });
});
