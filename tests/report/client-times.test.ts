import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { joinedSpans, lastingText, minutesText, spansText } from '../../src/report/client-times.js';
import { findingWith } from '../support/forecast-fixture.js';

describe('the times of findings', () => {
  const finding = fc
    .tuple(
      fc.double({ min: -5, max: 700, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
    )
    .map(([atSeconds, lasts]) => findingWith({ atSeconds, untilSeconds: atSeconds + lasts }));

  test('lie apart, in order and within the file, and hold every finding', () => {
    fc.assert(
      fc.property(fc.array(finding, { minLength: 1 }), (findings) => {
        const spans = joinedSpans(findings, 600);
        for (const [index, { from, to }] of spans.entries()) {
          expect(from).toBeLessThanOrEqual(to);
          expect(from).toBeGreaterThan((spans[index - 1]?.to ?? -2) + 1);
          expect(to).toBeLessThanOrEqual(600);
        }
        for (const { atSeconds, untilSeconds } of findings) {
          const [at, until] = [atSeconds ?? 0, untilSeconds ?? 0].map((seconds) =>
            Math.min(Math.max(seconds, 0), 600),
          );
          const isHeld = spans.some(({ from, to }) => from <= (at ?? 0) && (until ?? 0) < to + 1);
          expect(isHeld).toBe(true);
        }
      }),
    );
  });

  test('are none for the whole file', () => {
    expect(joinedSpans([findingWith({ atSeconds: null })], 600)).toEqual([]);
    expect(spansText([])).toBe('The whole file');
  });

  test.each([
    [1, '00:00'],
    [2, '00:00 and 00:10'],
    [3, '00:00, 00:10 and 00:20'],
    [8, '00:00, 00:10, 00:20, 00:30, 00:40, 00:50, 01:00 and 01:10'],
    [9, '00:00, 00:10, 00:20, 00:30, 00:40, 00:50, 01:00, 01:10 and 1 more place'],
    [20, '00:00, 00:10, 00:20, 00:30, 00:40, 00:50, 01:00, 01:10 and 12 more places'],
  ])('are a list that is still read: %d places', (count, text) => {
    const spans = Array.from({ length: count }, (_, place) => ({
      from: 10 * place,
      to: 10 * place,
    }));
    expect(spansText(spans)).toBe(text);
  });
});

test.each([
  [0, '00:00'],
  [59.99, '00:59'],
  [3725, '62:05'],
])('%d s into a file is %s', (seconds, text) => {
  expect(minutesText(seconds)).toBe(text);
});

test.each([
  [40, '40 s'],
  [60, '1 min'],
  [80, '1 min 20 s'],
])('%d s last %s', (seconds, text) => {
  expect(lastingText(seconds)).toBe(text);
});
