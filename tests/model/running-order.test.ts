import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type OrderTrack, runningOrder, tightIn } from '../../src/model/running-order.js';

const START = 0.146;

/** Tracks whose bends grow inwards in a way of their own, or not at all steadily. */
const track: fc.Arbitrary<OrderTrack> = fc
  .record({
    isPinned: fc.boolean(),
    radiusUsed: fc.integer({ min: 1, max: 25 }).map((mm) => mm / 1000),
    bright: fc.integer({ min: 0, max: 50 }),
    power: fc.integer({ min: 0, max: 4 }),
  })
  .map(({ bright, power, ...rest }) => ({
    ...rest,
    name: 'invented',
    tightAt: (radius: number) => bright * (START / radius) ** power,
  }));

const gaps = fc.array(
  fc.integer({ min: 0, max: 20 }).map((tenths) => tenths / 10_000),
  { minLength: 6, maxLength: 6 },
);

function permutations(items: readonly number[]): number[][] {
  if (items.length === 0) return [[]];
  return items.flatMap((item) =>
    permutations(items.filter((other) => other !== item)).map((rest) => [item, ...rest]),
  );
}

function pinnedStay(tracks: readonly OrderTrack[]) {
  return (order: readonly number[]) =>
    tracks.every(({ isPinned }, at) => !isPinned || order[at] === at);
}

describe('the running order', () => {
  test('bends as little as the best of all orders in which pinned tracks stay', () => {
    let better = 0;
    fc.assert(
      fc.property(fc.array(track, { minLength: 1, maxLength: 6 }), gaps, (tracks, between) => {
        const best = runningOrder(tracks, START, between);
        const allowed = permutations(tracks.map((_, at) => at)).filter(pinnedStay(tracks));
        const costs = allowed.map((order) => tightIn(order, tracks, START, between));
        expect(best.tight).toBeWithin(Math.min(...costs), 1e-9);
        expect(tightIn(best.order, tracks, START, between)).toBe(best.tight);
        expect(pinnedStay(tracks)(best.order)).toBe(true);
        expect(best.order.toSorted((one, other) => one - other)).toEqual(tracks.map((_, at) => at));
        if (best.tight < best.tightBefore) better += 1;
      }),
      { numRuns: 150 },
    );
    expect(better).toBeGreaterThan(0);
  });

  test('of tracks of one length puts the brightest outermost', () => {
    // Rearrangement inequality: Σ b·f(r) is least with the largest b at the least f.
    const brights = [3, 9, 1, 7, 5];
    const tracks = brights.map((bright) => ({
      name: 'invented',
      isPinned: false,
      radiusUsed: 0.015,
      tightAt: (radius: number) => bright / radius ** 2,
    }));
    expect(runningOrder(tracks, START, []).order).toEqual([1, 3, 4, 0, 2]);
  });

  test('is the given one where nothing bends, or all alike', () => {
    const tracks = Array.from({ length: 5 }, (_, at) => ({
      name: 'invented',
      isPinned: false,
      radiusUsed: 0.01 + at / 1000,
      tightAt: () => 7,
    }));
    const { order, tight, tightBefore } = runningOrder(tracks, START, []);
    expect(order).toEqual([0, 1, 2, 3, 4]);
    expect(tight).toBe(tightBefore);
  });

  test('of more than twelve tracks is one that no exchange betters, and says so', () => {
    const tracks = Array.from({ length: 14 }, (_, at) => ({
      name: 'invented',
      isPinned: at === 3,
      radiusUsed: 0.005,
      tightAt: (radius: number) => ((at * 5) % 14) / radius ** 2,
    }));
    const best = runningOrder(tracks, START, []);
    expect(best.isExhaustive).toBe(false);
    expect(best.order[3]).toBe(3);
    // All as long: without the pinned one it is by brightness alone.
    const brightness = best.order.filter((at) => at !== 3).map((at) => (at * 5) % 14);
    expect(brightness).toEqual(brightness.toSorted((one, other) => other - one));
    expect(best.tight).toBeLessThan(best.tightBefore);
  });

  test('leaves every gap at its place', () => {
    const tracks = [1, 2].map((bright) => ({
      name: 'invented',
      isPinned: false,
      radiusUsed: 0.01,
      tightAt: (radius: number) => bright / radius,
    }));
    const begins = [START - 0.001, START - 0.001 - 0.01 - 0.003];
    const { tight } = runningOrder(tracks, START, [0.001, 0.003]);
    expect(tight).toBeWithin(2 / begins[0]! + 1 / begins[1]!, 1e-12);
  });
});
