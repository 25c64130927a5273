import fc from 'fast-check';
import { expect, test } from 'vitest';
import { BINS_PER_QUARTER } from '../../src/analysis/motion.js';
import { binLand } from '../../src/model/bin-land.js';
import { planSide } from '../../src/model/plan.js';
import { binStart, plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, settingsWith } from '../support/model-settings.js';
import { motionOf } from '../support/motion-of.js';
import { randomMotion } from '../support/random-motion.js';

test('the least land of a quarter’s bins is the quarter’s land, whatever the plan', () => {
  fc.assert(
    fc.property(
      randomMotion(),
      fc.constantFrom('machine', 'turn-ahead', 'fixed'),
      fc.double({ min: -6, max: 6, noNaN: true }),
      (motion, planner, levelDb) => {
        const side = plannedSide(motion, settingsWith());
        const plan = planSide(side, planner, levelDb);
        const land = binLand(side, plan);
        const verified = verify(side, plan);
        expect(land.length).toBe(side.count * BINS_PER_QUARTER);
        for (const [quarter, least] of verified.land.entries()) {
          const bins = land.subarray(quarter * BINS_PER_QUARTER, (quarter + 1) * BINS_PER_QUARTER);
          expect(Math.min(...bins)).toBe(least);
        }
      },
    ),
    { numRuns: 60 },
  );
});

test('an unmodulated side keeps pitch less width in every bin', () => {
  const settings = settingsWith({ ...EXACT, basePitch: 90e-6, baseWidth: 50e-6 });
  const side = plannedSide(emptyMotion(7), settings);
  const land = binLand(side, planSide(side, 'turn-ahead', 0));
  expect(land).toBeWithin(new Array(land.length).fill(40e-6), 1e-12, 0);
});

test('one swing of the right wall costs land in its own bin alone, √2 of its displacement', () => {
  const settings = settingsWith({ ...EXACT, basePitch: 90e-6, baseWidth: 50e-6 });
  const swing = { from: 2.5, until: 2.52, u: 10e-6 };
  const motion = motionOf({
    turns: 3,
    left: () => 0,
    right: (at) => (at > swing.from && at < swing.until ? swing.u : 0),
  });
  const side = plannedSide(motion, settings);
  const land = binLand(side, planSide(side, 'fixed', 0));
  for (const [bin, value] of land.entries()) {
    const [begins, ends] = [binStart(side, bin), binStart(side, bin + 1)];
    const isMoved = begins < swing.until && ends > swing.from;
    expect(value).toBeWithin(40e-6 - (isMoved ? Math.SQRT2 * swing.u : 0), 1e-12, 0);
  }
});
