import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cheapestCovers, type Option } from '../../src/model/fit-cover.js';
import { seeded } from '../support/signals.js';

const problems = fc
  .record({
    faults: fc.integer({ min: 1, max: 6 }),
    options: fc.array(
      fc.record({
        cost: fc.integer({ min: 1, max: 20 }),
        mends: fc.uniqueArray(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 4 }),
        slot: fc.constantFrom('a', 'b', 'c', 'd', 'e', 'f', 'g'),
      }),
      { maxLength: 10 },
    ),
  })
  .map(({ faults, options }) => ({
    faults,
    options: options.map((option) => ({
      ...option,
      mends: option.mends.filter((fault) => fault < faults),
    })),
  }));

/** All sets of options that cover, by trying each of the 2ⁿ. */
function allCovers(faults: number, options: readonly Option[]): { set: number[]; cost: number }[] {
  const covers: { set: number[]; cost: number }[] = [];
  for (let bits = 0; bits < 2 ** options.length; bits++) {
    const set = [...options.keys()].filter((index) => (bits >> index) % 2 === 1);
    const mended = new Set(set.flatMap((index) => options[index]!.mends));
    const slots = set.map((index) => options[index]!.slot);
    if (mended.size < faults || new Set(slots).size < slots.length) continue;
    covers.push({ set, cost: set.reduce((sum, index) => sum + options[index]!.cost, 0) });
  }
  return covers;
}

/** Whether each option of a set mends something that no other of it does. */
function isIrredundant(set: readonly number[], options: readonly Option[]): boolean {
  return set.every((index) =>
    options[index]!.mends.some((fault) =>
      set.every((other) => other === index || !options[other]!.mends.includes(fault)),
    ),
  );
}

describe('cheapestCovers', () => {
  it('finds the cost that trying all sets finds, and nothing where no set covers', () => {
    fc.assert(
      fc.property(problems, ({ faults, options }) => {
        const least = Math.min(...allCovers(faults, options).map(({ cost }) => cost));
        const [found] = cheapestCovers(faults, options, 1);
        expect(found?.cost ?? Number.POSITIVE_INFINITY).toBe(least);
      }),
      { numRuns: 500 },
    );
  });

  it('gives sets that cover, in order of cost, with one option of a slot', () => {
    fc.assert(
      fc.property(problems, ({ faults, options }) => {
        const known = new Map(
          allCovers(faults, options).map(({ set, cost }) => [set.join(' '), cost]),
        );
        const covers = cheapestCovers(faults, options, 50);
        const costs = covers.map(({ cost }) => cost);
        expect(costs).toEqual([...costs].sort((a, b) => a - b));
        for (const { options: set, cost } of covers) expect(known.get(set.join(' '))).toBe(cost);
      }),
      { numRuns: 300 },
    );
  });

  it('reaches every set of which nothing can be left out', () => {
    fc.assert(
      fc.property(problems, ({ faults, options }) => {
        const found = new Set(
          cheapestCovers(faults, options, 5000).map(({ options: set }) => set.join(' ')),
        );
        for (const { set } of allCovers(faults, options)) {
          if (isIrredundant(set, options)) expect(found).toContain(set.join(' '));
        }
      }),
      { numRuns: 200 },
    );
  });

  it('falls back to a set by greed where the search would take too long', () => {
    fc.assert(
      fc.property(problems, ({ faults, options }) => {
        const known = new Map(
          allCovers(faults, options).map(({ set, cost }) => [set.join(' '), cost]),
        );
        for (const { options: set, cost } of cheapestCovers(faults, options, 1, 1)) {
          expect(known.get(set.join(' '))).toBe(cost);
        }
      }),
      { numRuns: 200 },
    );
    const apart = [0, 1, 2].map((fault) => ({ cost: 1, mends: [fault], slot: String(fault) }));
    expect(cheapestCovers(3, apart, 1, 1)).toEqual([{ options: [0, 1, 2], cost: 3 }]);
  });

  it('comes to an end with a hundred faults and options that overlap at random', () => {
    const next = seeded(5);
    const options = Array.from({ length: 80 }, (_, at) => ({
      cost: 1 + 10 * next(),
      mends: Array.from({ length: 100 }, (__, fault) => fault).filter(() => next() < 0.1),
      slot: String(at),
    }));
    const every = { cost: 60, mends: Array.from({ length: 100 }, (_, at) => at), slot: 'level' };
    const [cover] = cheapestCovers(100, [...options, every], 12);
    expect(cover?.cost ?? 61).toBeLessThanOrEqual(60 + 1e-9);
  });

  it('takes thirty faults with three menders each in no time', () => {
    const options = Array.from({ length: 90 }, (_, at) => ({
      cost: 1 + (at % 3),
      mends: [Math.floor(at / 3)],
      slot: String(at),
    }));
    expect(cheapestCovers(30, options, 3).map(({ cost }) => cost)).toEqual([30, 31, 31]);
  });
});
