// Thresholds of the cause, from just under to just over: common practice, no published source.
import { describe, expect, test } from 'vitest';
import { landTaker } from '../../src/model/land-taker.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, settingsWith } from '../support/model-settings.js';

const BIN = 200;

/** What takes the land at one bin where the walls move so, m. */
function takerOf(moves: {
  outward: number;
  inward: number;
  lateral: number;
  vertical?: number;
  bass?: number;
}) {
  const motion = emptyMotion(18);
  motion.outward[BIN] = moves.outward;
  motion.inward[BIN - 64] = moves.inward;
  // The place that is looked at is that of the wall that moves more.
  const from = moves.inward > moves.outward ? BIN - 64 : BIN;
  motion.lateral[from] = moves.lateral;
  motion.lift[from] = moves.vertical ?? 0;
  motion.lowBand.lateralAmplitude.fill(moves.bass ?? 0);
  motion.approachLoose[BIN] = moves.outward + moves.inward;
  const side = plannedSide(motion, settingsWith({ ...EXACT, basePitch: 200e-6 }));
  return landTaker(side, planSide(side, 'fixed', 0), BIN + side.lead * 16);
}

describe('the cause', () => {
  test.each([
    [39e-6, 'lateral-low'],
    [41e-6, 'lateral-high'],
  ])('of %d m over bass of 10 µm, four times as much at most: %s', (outward, cause) => {
    expect(takerOf({ outward, inward: outward, lateral: 20e-6, bass: 10e-6 }).cause).toBe(cause);
  });

  test.each([
    [10e-6, 12e-6, 'one-wall'],
    [12e-6, 10e-6, 'one-wall'],
    [10e-6, 13e-6, 'vertical'],
    [13e-6, 10e-6, 'lateral-high'],
  ])('of lateral %d m and vertical %d m, alike up to a quarter: %s', (lateral, vertical, cause) => {
    expect(takerOf({ outward: 20e-6, inward: 0, lateral, vertical }).cause).toBe(cause);
  });

  test.each([
    [79, 'both'],
    [81, 'right'],
    [21, 'both'],
    [19, 'left'],
  ])('%d per cent of the motion by the outer wall: %s', (percent, wall) => {
    const outward = percent * 1e-6;
    const taker = takerOf({ outward, inward: 100e-6 - outward, lateral: 20e-6 });
    expect(taker.wall).toBe(wall);
  });
});
