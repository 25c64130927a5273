import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestSplit, radiusOf, type SplitTrack } from '../../src/model/best-split.js';

const tracksOf = (mm: readonly number[]): SplitTrack[] =>
  mm.map((each) => ({ name: 'invented', radiusUsed: each / 1000, durationSeconds: 60 * each }));

describe('where a running order is parted over sides', () => {
  test('evens two sides out', () => {
    const split = bestSplit([tracksOf([20, 20, 20, 20]), tracksOf([20, 10])]);
    expect(split?.counts).toEqual([3, 3]);
    expect(split?.most).toBeWithin(0.06, 1e-12);
  });

  test.each([
    [
      'balanced',
      [
        [20, 20],
        [20, 20],
      ],
    ],
    ['as good as it gets with one long track', [[60], [20, 10]]],
    [
      'a twentieth is not gained',
      [
        [20, 20.5],
        [20, 19.5],
      ],
    ],
    ['one side', [[20, 20]]],
  ])('says nothing of sides that are %s', (_, sides) => {
    expect(bestSplit(sides.map(tracksOf))).toBeNull();
  });

  test('is the best of all ways to part them, none left empty', () => {
    const lengths = fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 8 });
    let told = 0;
    fc.assert(
      fc.property(lengths, fc.array(lengths, { minLength: 1, maxLength: 3 }), (first, others) => {
        const sides = [first, ...others].map(tracksOf);
        const tracks = sides.flat();
        const given = Math.max(...sides.map(radiusOf));
        const mosts = partings(tracks.length, sides.length).map((counts) => mostOf(tracks, counts));
        const least = Math.min(...mosts);
        const split = bestSplit(sides);
        if (least > given * 0.95 + 1e-12) {
          expect(split).toBeNull();
          return;
        }
        if (split === null) {
          expect(least).toBeWithin(given * 0.95, 1e-12);
          return;
        }
        told += 1;
        expect(split.most).toBeWithin(least, 1e-12);
        expect(mostOf(tracks, split.counts)).toBeWithin(least, 1e-12);
        expect(Math.min(...split.counts)).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
    expect(told).toBeGreaterThan(30);
  });
});

/** All ways to write `tracks` as a sum of `sides` numbers, each at least 1. */
function partings(tracks: number, sides: number): number[][] {
  if (sides === 1) return [[tracks]];
  return Array.from({ length: tracks - sides + 1 }, (_, less) => less + 1).flatMap((count) =>
    partings(tracks - count, sides - 1).map((rest) => [count, ...rest]),
  );
}

function mostOf(tracks: readonly SplitTrack[], counts: readonly number[]): number {
  let from = 0;
  return Math.max(
    ...counts.map((count) => {
      from += count;
      return radiusOf(tracks.slice(from - count, from));
    }),
  );
}
