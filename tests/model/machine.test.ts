import { describe, expect, test } from 'vitest';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import type { MachineSettings, Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, settingsWith } from '../support/model-settings.js';

/** Nothing but envelopes shows: no base pitch in the way, no slews. */
const BARE = { ...EXACT, basePitch: 1e-9, pitchOpenSlew: 1, pitchCloseSlew: 1 };
/** landMin and two half-widths of base width. */
const STILL = 12.7e-6 + 50.8e-6;

/** The machine's pitch in the quarters from −4 to 15 over its pitch in silence, µm. */
function opened(
  fill: (motion: ReturnType<typeof emptyMotion>) => void,
  machine: Partial<MachineSettings> = {},
  changes: Partial<Settings> = {},
): number[] {
  const motion = emptyMotion(4 * 1.8);
  fill(motion);
  const settings = settingsWith({ ...BARE, ...changes });
  const side = plannedSide(motion, {
    ...settings,
    machine: { ...settings.machine, ...machine },
  });
  const { pitch } = planSide(side, 'machine', 0);
  return Array.from(pitch.subarray(0, 20), (p) => Math.round((p - STILL) * 1e8) / 100);
}

/** A row of 20 quarters from −4 on: 0 but for some of them. */
function row(value: number, from: number, to: number): number[] {
  return Array.from({ length: 20 }, (_, index) =>
    index - 4 >= from && index - 4 <= to ? value : 0,
  );
}

describe('the machine', () => {
  const outward = (motion: ReturnType<typeof emptyMotion>) => motion.outward.fill(10e-6, 96, 112);
  const inward = (motion: ReturnType<typeof emptyMotion>) => motion.inward.fill(10e-6, 96, 112);

  test.each([
    [1, row(10, 2, 6)],
    [0.5, row(10, 4, 6)],
    [0, row(10, 6, 6)],
    [1.6, row(10, 0, 6)],
  ])('sees the outer wall of quarter 6 %d turns ahead', (advanceTurns, expected) => {
    expect(opened(outward, { advanceTurns })).toEqual(expected);
  });

  test.each([
    [1, row(10, 6, 10)],
    [0.5, row(10, 6, 8)],
    [0, row(10, 6, 6)],
  ])('holds the inner wall of quarter 6 for %d turns', (holdTurns, expected) => {
    expect(opened(inward, { holdTurns })).toEqual(expected);
  });

  test('reads with its gain', () => {
    expect(opened(outward, { gain: 1.5 })).toEqual(row(15, 2, 6));
  });

  test('makes room for the groove that opens where it looks, both ends of each quarter', () => {
    const lift = (motion: ReturnType<typeof emptyMotion>) => motion.lift.fill(22.7e-6, 96, 112);
    // 10 µm of half-width more from node 6 to node 7, and again a turn later where it is faced:
    // seen from the quarter that ends at node 6 less a turn ahead, to the one that begins at 11.
    const depths = { depthOpenSlew: 1, depthCloseSlew: 1 };
    expect(opened(lift, {}, depths)).toEqual(row(10, 1, 11));
  });

  test('keeps its own slews where it has some', () => {
    const own = opened(outward, { openSlew: 3e-6, closeSlew: 4e-6, advanceTurns: 0 });
    expect(own.slice(4 + 2, 4 + 9)).toEqual([0, 1, 4, 7, 10, 6, 2]);
    const slews = { pitchOpenSlew: 3e-6, pitchCloseSlew: 4e-6 };
    expect(opened(outward, { advanceTurns: 0 }, slews)).toEqual(own);
  });
});
