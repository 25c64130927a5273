import { describe, expect, test } from 'vitest';
import type { MotionSummary } from '../../src/analysis/motion.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { strongestBass, strongestTreble } from '../../src/model/strongest-frequency.js';
import { trackBends } from '../../src/model/track-bends.js';
import { trackFigures } from '../../src/model/track-figures.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingWith } from '../support/forecast-fixture.js';
import { EXACT, settingsWith } from '../support/model-settings.js';
import { fillHistogram } from '../support/motion-of.js';

const T = 1.8;
const QUARTER = T / 4;
const BIN = T / 64;
/** Two tracks of twelve quarter turns, quarters 8 to 19 and 28 to 39, and one of two quarters. */
const TRACKS = [
  { name: 'first', fromSeconds: 8 * QUARTER, untilSeconds: 20 * QUARTER },
  { name: 'second', fromSeconds: 28 * QUARTER, untilSeconds: 40 * QUARTER },
  { name: 'short', fromSeconds: 44 * QUARTER, untilSeconds: 46 * QUARTER },
];

function sideWith(motion: MotionSummary, tracks = TRACKS, levelDb = 0) {
  const settings = settingsWith({ ...EXACT, executes: 'fixed', basePitch: 100e-6 });
  const side = plannedSide(motion, settings, { ...NOTHING_BY_HAND, tracks });
  return { side, plan: planSide(side, 'fixed', levelDb) };
}

function figuresOf(motion: MotionSummary, tracks = TRACKS) {
  const { side, plan } = sideWith(motion, tracks);
  return trackFigures(side, plan, []);
}

describe('the least land of a track', () => {
  const OPEN = 100e-6 - 50.8e-6;

  test('is that of its own bins, the first of equals', () => {
    const motion = emptyMotion(30 * T);
    // Just outside of both ends there is less.
    for (const [bin, taken] of [
      [8 * 16 - 1, 40e-6],
      [8 * 16, 10e-6],
      [15 * 16 + 3, 20e-6],
      [16 * 16 + 7, 20e-6],
      [20 * 16, 40e-6],
      [28 * 16 - 1, 40e-6],
      [40 * 16 - 1, 30e-6],
      [40 * 16, 40e-6],
    ] as const) {
      motion.approachLoose[bin] = taken;
    }
    const [first, second, short] = figuresOf(motion);
    expect(first?.landMin).toBeWithin(OPEN - 20e-6, 1e-12);
    expect(first?.landMinAtSeconds).toBeWithin(15 * QUARTER + 3 * BIN, 1e-9);
    expect(second?.landMin).toBeWithin(OPEN - 30e-6, 1e-12);
    expect(second?.landMinAtSeconds).toBeWithin(40 * QUARTER - BIN, 1e-9);
    expect(short?.landMin).toBeWithin(OPEN, 1e-12);
    motion.approachLoose[8 * 16] = 25e-6;
    expect(figuresOf(motion)[0]?.landMinAtSeconds).toBeWithin(8 * QUARTER, 1e-9);
  });

  test('does not hang on how a time was rounded', () => {
    const motion = emptyMotion(30 * T);
    motion.approachLoose[8 * 16] = 20e-6;
    motion.approachLoose[20 * 16] = 30e-6;
    const [track] = TRACKS;
    const late = { ...track!, fromSeconds: track!.fromSeconds + 1e-9 };
    const [figures] = figuresOf(motion, [{ ...late, untilSeconds: late.untilSeconds + 1e-9 }]);
    expect(figures?.landMin).toBeWithin(OPEN - 20e-6, 1e-12);
  });

  test('of one that lasts longer than the side ends with it', () => {
    const motion = emptyMotion(10 * T);
    const whole = { name: 'whole', fromSeconds: 0, untilSeconds: 99 };
    expect(figuresOf(motion, [whole])[0]?.landMin).toBeWithin(OPEN, 1e-12);
  });
});

describe('the bends of a track', () => {
  /** A program of which all samples of some quarters bend too tight. */
  function bending(...quarters: readonly number[]) {
    const motion = emptyMotion(30 * T);
    for (let quarter = 0; quarter < 120; quarter++) {
      const magnitude = quarters.includes(quarter) ? 60_000 : 1;
      fillHistogram(motion.left.accelerationHistogram, quarter, [magnitude, magnitude]);
      motion.left.accelerationPeak[quarter] = magnitude * 1.01;
    }
    return motion;
  }
  const shares = (...quarters: readonly number[]) =>
    figuresOf(bending(...quarters)).map(({ bendShareSpherical }) => bendShareSpherical);

  test.each([
    // A second is two quarters; one that is only partly the track's is not its.
    ['before the first track', [7], [0, 0, 0]],
    ['at its beginning', [8], [0.5, 0, 0]],
    ['at its end', [19], [0.5, 0, 0]],
    ['behind it', [20], [0, 0, 0]],
    ['in both tracks', [10, 11, 30], [1, 0.5, 0]],
    ['in one of two quarters', [44], [0, 0, 0.5]],
    ['beside those', [43, 46], [0, 0, 0]],
  ] as const)('%s', (_, quarters, expected) => {
    expect(shares(...quarters)).toBeWithin(expected, 1e-12);
  });

  test('that is shorter than a second are those of its quarters', () => {
    const one = { name: 'one', fromSeconds: 8 * QUARTER, untilSeconds: 9 * QUARTER };
    expect(figuresOf(bending(8), [one])[0]?.bendShareSpherical).toBe(1);
    expect(figuresOf(bending(7, 9), [one])[0]?.bendShareSpherical).toBe(0);
  });

  test('are counted at the planned level', () => {
    const motion = bending(10);
    const [track] = TRACKS;
    const tightAt = (levelDb: number) => {
      const { side, plan } = sideWith(motion, TRACKS, levelDb);
      return trackBends(side, plan, track!).tightAt(0);
    };
    // V²/18 µm is 14.4 km/s² at the edge: 60 km/s² are 12.4 dB over it.
    expect([-11, -13].map(tightAt)).toEqual([2, 0]);
    const { side, plan } = sideWith(motion);
    // The histogram of the still wall is empty: two samples a quarter on the other one.
    expect(trackBends(side, plan, track!).samples).toBe(24);
  });
});

describe('the worst finding of a track', () => {
  const { side, plan } = sideWith(emptyMotion(30 * T));
  const [from, until] = [8 * QUARTER, 20 * QUARTER];
  const worstOf = (atSeconds: number | null, untilSeconds: number | null) => {
    const finding = findingWith({ atSeconds, untilSeconds });
    return trackFigures(side, plan, [finding])[0]?.worst ?? null;
  };

  test.each([
    ['inside of it', from + 1, from + 2, true],
    ['that begins before it', from - 1, from, true],
    ['that ends before it', from - 1, from - 0.01, false],
    ['at its end', until - 0.01, until + 1, true],
    ['that begins where it ends', until, until + 1, false],
    ['at one time', from + 1, null, true],
    ['at one time before it', from - 1, null, false],
    ['about the whole side', null, null, false],
  ] as const)('%s', (_, atSeconds, untilSeconds, isIts) => {
    expect(worstOf(atSeconds, untilSeconds) !== null).toBe(isIts);
  });

  test('is the first of all that touch it', () => {
    const [one, other] = [findingWith({ atSeconds: from }), findingWith({ atSeconds: from + 1 })];
    expect(trackFigures(side, plan, [one, other])[0]?.worst).toBe(one);
  });
});

describe('the strongest frequency', () => {
  const motion = emptyMotion(5 * T);
  for (const [wall, hertz] of [
    [motion.left, 3000],
    [motion.right, 8000],
  ] as const) {
    wall.velocityMeanSquare[4] = 1e-4;
    wall.accelerationMeanSquare[4] = 1e-4 * (2 * Math.PI * hertz) ** 2;
  }
  motion.lowBand.strongestFrequency[4] = 44;

  test('of treble is that of the wall, of both that of the one with more of it', () => {
    const found = (['left', 'right', 'both'] as const).map((wall) =>
      strongestTreble(motion, 4, wall),
    );
    expect(found.map(Number)).toBeWithin([3000, 8000, 8000], 1e-6);
    motion.left.accelerationMeanSquare[4]! *= 100;
    expect(strongestTreble(motion, 4, 'both')).toBeWithin(30_000, 1e-6);
  });

  test('is none in silence and outside of the program', () => {
    expect(strongestTreble(motion, 5, 'both')).toBeNull();
    expect(strongestTreble(motion, 999, 'left')).toBeNull();
    expect(strongestBass(motion, 4)).toBe(44);
    expect(strongestBass(motion, 5)).toBeNull();
    expect(strongestBass(motion, -1)).toBeNull();
  });
});
