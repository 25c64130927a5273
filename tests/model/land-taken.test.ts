import { describe, expect, test } from 'vitest';
import type { MotionSummary } from '../../src/analysis/motion.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { landTaker } from '../../src/model/land-taker.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

const BIN = 200;
const QUARTER = 12;
const TURN_BINS = 64;

function takerAt(motion: MotionSummary, changes: Partial<Settings> = {}, bin = BIN) {
  const side = plannedSide(motion, settingsWith({ ...EXACT, basePitch: 200e-6, ...changes }));
  const plan = planSide(side, changes.executes === 'plan' ? 'turn-ahead' : 'fixed', 0);
  return landTaker(side, plan, bin + side.lead * 16);
}

/** Ten turns in which the outer wall moves now and the inner one a turn earlier. */
function moving(outward: number, inward: number): MotionSummary {
  const motion = emptyMotion(18);
  motion.outward[BIN] = outward;
  motion.inward[BIN - TURN_BINS] = inward;
  motion.approachLoose[BIN] = outward + inward;
  return motion;
}

/** Treble of a frequency on a wall throughout: rms(ü)/(2π·rms(u̇)). */
function withTreble(motion: MotionSummary, left: number, right: number): MotionSummary {
  for (const [wall, hertz] of [
    [motion.left, left],
    [motion.right, right],
  ] as const) {
    wall.velocityMeanSquare.fill(1e-4);
    wall.accelerationMeanSquare.fill(1e-4 * (2 * Math.PI * hertz) ** 2);
  }
  return motion;
}

describe('what takes the land', () => {
  test('of silence is nothing that has opened or moved', () => {
    expect(takerAt(emptyMotion(18))).toEqual({
      cause: 'lateral-high',
      wall: 'both',
      frequency: null,
    });
  });

  test('is the width only where the groove opens by more than the walls move', () => {
    const lifted = (approach: number) => {
      const motion = moving(approach, 0);
      // Opens both turns by 10 µm each.
      motion.lift.fill(12.7e-6 + 10e-6);
      return takerAt(motion, { executes: 'plan' }).cause;
    };
    expect(lifted(19e-6)).toBe('width');
    expect(lifted(21e-6)).not.toBe('width');
  });

  test('is the width by the end of the quarter at which the groove is wider', () => {
    const slews = { executes: 'plan', depthOpenSlew: 10e-6, depthCloseSlew: 10e-6 } as const;
    // It opens by 20 µm, 10 a quarter: by nothing at one end of the quarter, by 10 at the other.
    const causeBeside = (lifted: number) => {
      const motion = emptyMotion(18);
      motion.lift[lifted * 16] = 12.7e-6 + 20e-6;
      motion.approachLoose[QUARTER * 16] = 5e-6;
      return takerAt(motion, slews, QUARTER * 16).cause;
    };
    expect(causeBeside(QUARTER + 2)).toBe('width');
    expect(causeBeside(QUARTER + 3)).not.toBe('width');
  });

  test('is the wall that moves more, with the frequency of its own treble', () => {
    expect(takerAt(withTreble(moving(20e-6, 0), 3000, 8000))).toMatchObject({
      wall: 'right',
      frequency: expect.closeTo(8000, 6),
    });
    expect(takerAt(withTreble(moving(0, 20e-6), 3000, 8000))).toMatchObject({
      wall: 'left',
      frequency: expect.closeTo(3000, 6),
    });
    // Both walls, the inner one a little more.
    expect(takerAt(withTreble(moving(10e-6, 12e-6), 3000, 8000))).toMatchObject({
      wall: 'both',
      frequency: expect.closeTo(3000, 6),
    });
  });

  test('is judged where that wall moves: the inner one a turn ago', () => {
    const motion = moving(10e-6, 30e-6);
    motion.lateral[BIN] = 50e-6;
    motion.sink[BIN - TURN_BINS] = 20e-6;
    expect(takerAt(motion).cause).toBe('vertical');
    motion.lowBand.strongestFrequency[QUARTER - 4] = 40;
    motion.lowBand.lateralAmplitude[QUARTER - 4] = 20e-6;
    expect(takerAt(motion).frequency).toBe(40);
  });

  test('is vertical motion of either sign', () => {
    for (const row of ['lift', 'sink'] as const) {
      const motion = moving(20e-6, 20e-6);
      motion.lateral[BIN] = 5e-6;
      motion[row][BIN] = 20e-6;
      expect(takerAt(motion).cause).toBe('vertical');
    }
  });

  test('is one wall only where one wall takes the land', () => {
    const alike = (outward: number, inward: number) => {
      const motion = moving(outward, inward);
      motion.lateral[BIN] = 10e-6;
      motion.lift[BIN] = 11e-6;
      return takerAt(motion).cause;
    };
    expect(alike(20e-6, 0)).toBe('one-wall');
    expect(alike(20e-6, 18e-6)).toBe('vertical');
  });

  test('is bass as far as lateral and vertical bass together explain the larger displacement', () => {
    // A wall moves by (x ± z)/√2; four times the rms of both, so 20 µm of either reach 56.6 µm.
    const explained = (outward: number, lateral: number, vertical: number) => {
      const motion = moving(outward * Math.SQRT2, outward / 10);
      motion.lateral[BIN] = outward;
      motion.lowBand.lateralAmplitude.fill(lateral);
      motion.lowBand.verticalAmplitude.fill(vertical);
      return takerAt(motion).cause === 'lateral-low';
    };
    const reach = (4 * 20e-6) / Math.SQRT2;
    for (const [lateral, vertical] of [
      [20e-6, 0],
      [0, 20e-6],
      [12e-6, 16e-6],
    ] as const) {
      expect(explained(0.99 * reach, lateral, vertical)).toBe(true);
      expect(explained(1.01 * reach, lateral, vertical)).toBe(false);
    }
  });
});

describe('a hot spot', () => {
  const spotsOf = (motion: MotionSummary, changes: Partial<Settings> = {}) =>
    forecastSide(
      motion,
      settingsWith({ ...EXACT, executes: 'plan', basePitch: 100e-6, ...changes }),
      { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE },
    ).hotSpots;

  test('has the pitch of its quarter, and no track on a side of one file', () => {
    const motion = emptyMotion(18);
    motion.approachLoose[BIN] = 80e-6;
    const [spot] = spotsOf(motion);
    expect(spot?.pitch).toBeWithin(80e-6 + 50.8e-6 + 12.7e-6, 1e-12);
    expect(spot).not.toHaveProperty('track');
  });

  test('with land left reaches no contact, even in a groove that holds no tip', () => {
    const motion = emptyMotion(18);
    motion.approachLoose[BIN] = 10e-6;
    motion.lift[BIN] = 20e-6;
    const [spot] = spotsOf(motion, { executes: 'fixed' });
    expect(spot?.land).toBeGreaterThan(0);
    expect(spot?.reachesContact).toBe(false);
  });
});
