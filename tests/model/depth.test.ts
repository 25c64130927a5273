import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutDepth } from '../../src/model/groove.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import { emptyMotion } from '../support/empty-motion.js';
import { settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const RUNS = { numRuns: 60 };
const ROUNDING = 1e-15;
const level = fc.double({ min: -12, max: 12, noNaN: true });

describe('depth', () => {
  test('keeps the least width and its tolerance where the coating is thick enough', () => {
    fc.assert(
      fc.property(randomMotion(), level, (motion, levelDb) => {
        const settings = settingsWith({ depthMax: 1 });
        const side = plannedSide(motion, settings);
        const { widthMin } = verify(side, planSide(side, 'turn-ahead', levelDb));
        const kept = settings.widthMin + 2 * settings.depthTolerance;
        for (const width of widthMin) expect(width).toBeGreaterThanOrEqual(kept - ROUNDING);
      }),
      RUNS,
    );
  });

  test('keeps its slews and base width, and never cuts deeper than depthMax by itself', () => {
    fc.assert(
      fc.property(randomMotion(), level, (motion, levelDb) => {
        const settings = settingsWith({ depthMax: 45e-6 });
        const side = plannedSide(motion, settings);
        const plan = planSide(side, 'machine', levelDb);
        const { halfWidth, gain } = plan;
        for (const [node, here] of halfWidth.entries()) {
          const next = halfWidth[node + 1] ?? here;
          expect(next - here).toBeLessThanOrEqual(settings.depthOpenSlew + ROUNDING);
          expect(here - next).toBeLessThanOrEqual(settings.depthCloseSlew + ROUNDING);
          expect(here).toBeGreaterThanOrEqual(settings.baseWidth / 2);
        }
        for (const [quarter, width] of verify(side, plan).widthMax.entries()) {
          // Where base width itself is too deep with the motion, nothing can be done.
          const atBase = settings.baseWidth / 2 + gain * side.sinkMax[quarter]!;
          const unavoidable = cutDepth(2 * atBase, settings.bottomRadius);
          expect(cutDepth(width, settings.bottomRadius)).toBeLessThanOrEqual(
            Math.max(settings.depthMax, unavoidable) + ROUNDING,
          );
        }
      }),
      RUNS,
    );
  });

  test('opens 10 µm a quarter before a lift and closes 5 µm a quarter behind it', () => {
    const motion = emptyMotion(3.6);
    // Quarter 4 is lifted by 40 µm: 12.7 + 2.5 + 40 µm of half-width, over 25.4.
    motion.lift.fill(40e-6, 4 * 16, 5 * 16);
    const side = plannedSide(motion, settingsWith());
    const { halfWidth } = planSide(side, 'turn-ahead', 0);
    const expected = [25.4, 25.4, 25.4, 25.4, 25.4, 25.4, 35.2, 45.2, 55.2, 55.2, 50.2, 45.2];
    expect(halfWidth.subarray(0, 12)).toBeWithin(
      expected.map((halfWidthUm) => halfWidthUm * 1e-6),
      1e-12,
    );
    expect(planSide(side, 'fixed', 0).halfWidth).toBeWithin(
      Array.from({ length: side.count + 1 }, () => 25.4e-6),
      1e-18,
    );
  });

  test('widthPerLateral 1 opens the width by the lateral motion, in all quarters it meets', () => {
    const motion = emptyMotion(3.6);
    motion.lateral.fill(10e-6, 4 * 16, 5 * 16);
    const side = plannedSide(motion, settingsWith({ widthPerLateral: 1, depthOpenSlew: 1 }));
    const { halfWidth } = planSide(side, 'machine', 20 * Math.log10(2));
    expect(halfWidth.subarray(7, 12)).toBeWithin(
      [25.4e-6, 35.4e-6, 35.4e-6, 30.4e-6, 25.4e-6],
      1e-12,
    );
  });
});
