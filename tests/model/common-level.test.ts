import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CommonLevelSide, commonLevel } from '../../src/model/common-level.js';

function side(name: string, recommendedDb: number | null, levelStep = 0.5): CommonLevelSide {
  const headroom = { fillDb: 12, traceDb: recommendedDb, recommendedDb, limitedBy: null };
  return { name, path: `sides/${name}`, headroom, levelStep, isSilent: false };
}

const silent = (name: string) => ({ ...side(name, 12), isSilent: true });
const names = (sides: readonly CommonLevelSide[]) => sides.map(({ name }) => name);

test('is the least recommended level; the others give away what they hold over it', () => {
  const { levelDb, setBy, shares } = commonLevel([side('a', 2), side('b', -1.5), side('c', 0.5)]);
  expect(levelDb).toBe(-1.5);
  expect(names(setBy)).toEqual(['b']);
  expect(shares.map(({ givesAwayDb }) => givesAwayDb)).toEqual([3.5, 0, 2]);
});

test('is set by every side that holds no higher, in the order given', () => {
  const { setBy } = commonLevel([side('a', -1), side('b', 3), side('c', -1)]);
  expect(names(setBy)).toEqual(['a', 'c']);
});

test('is none where a side holds at none; that side sets it and nobody gives anything away', () => {
  const { levelDb, setBy, shares } = commonLevel([side('a', 2), side('b', null)]);
  expect(levelDb).toBeNull();
  expect(names(setBy)).toEqual(['b']);
  expect(shares.map(({ givesAwayDb }) => givesAwayDb)).toEqual([null, null]);
});

test('leaves silent sides out', () => {
  const { levelDb, setBy, shares, leftOut } = commonLevel([silent('s'), side('a', 2)]);
  expect(levelDb).toBe(2);
  expect(names(setBy)).toEqual(['a']);
  expect(shares).toHaveLength(1);
  expect(names(leftOut)).toEqual(['s']);
});

test.each([[[]], [[silent('s')]]])('of no sound is none, set by nobody', (sides) => {
  const { levelDb, setBy, shares } = commonLevel(sides);
  expect(levelDb).toBeNull();
  expect(setBy).toEqual([]);
  expect(shares).toEqual([]);
});

describe('with different level controls', () => {
  test.each([
    [[side('a', 1.75, 0.25), side('b', 2, 0.5)], 1.5],
    [[side('a', -0.25, 0.25), side('b', 2, 1)], -1],
    // Steps of 0.75 and 0.5 meet at multiples of 1.5.
    [[side('a', 2.25, 0.75), side('b', 4, 0.5)], 1.5],
    // Steps that nothing but 0 has in common, and 0 is too loud.
    [[side('a', -0.7, 0.7), side('b', -11, Math.PI)], null],
  ])('is a step of all of them: case %#', (sides, expected) => {
    expect(commonLevel(sides).levelDb).toBe(expected);
  });
});

test('no side is asked to hold more than it can, and one more step would ask it', () => {
  const recommended = fc.integer({ min: -24, max: 24 }).map((steps) => steps / 2);
  fc.assert(
    fc.property(fc.array(recommended, { minLength: 1, maxLength: 20 }), (levels) => {
      const { levelDb, shares, setBy } = commonLevel(
        levels.map((level, place) => side(`${place}`, level)),
      );
      const holding = (level: number) => levels.every((each) => each >= level);
      if (levelDb === null) throw new Error('every side holds');
      expect(holding(levelDb)).toBe(true);
      expect(holding(levelDb + 0.5)).toBe(false);
      expect(setBy).toHaveLength(levels.filter((each) => each === levelDb).length);
      expect(shares.every(({ givesAwayDb }) => givesAwayDb !== null && givesAwayDb >= 0)).toBe(
        true,
      );
    }),
  );
});
