import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { boundaryNeeds } from '../../src/model/planners/boundary-needs.js';
import { keepsLimits, likelyLimits } from '../../src/model/planners/pitch-limits.js';
import { spacingProgram } from '../../src/model/planners/spacing-program.js';
import { emptyMotion } from '../support/empty-motion.js';
import { loadHighs } from '../support/highs-solver.js';
import { settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const highs = await loadHighs();
const silent = emptyMotion(18);

const cases = fc.record({
  motion: randomMotion({ longestTurns: 12 }),
  levelDb: fc.double({ min: -12, max: 12, noNaN: true }),
  limits: fc.record({
    timingTolerance: fc.integer({ min: 0, max: 2 }),
    silentTurns: fc.integer({ min: 1, max: 2 }),
    pitchMax: fc.constantFrom(86e-6, 100e-6, 150e-6, 300e-6, 1),
    pitchOpenSlew: fc.double({ min: 2e-6, max: 2e-4, noNaN: true }),
    pitchCloseSlew: fc.double({ min: 2e-6, max: 2e-4, noNaN: true }),
  }),
});

// Outside reference: HiGHS 1.15, dual simplex, given every limit there is.
test('the tightest plan costs what it costs under all limits, whichever were left out at first', () => {
  let leftOut = 0;
  let broken = 0;
  fc.assert(
    fc.property(cases, ({ motion, levelDb, limits }) => {
      const settings = settingsWith(limits);
      const side = plannedSide(motion, settings);
      const plan = planSide(side, 'tightest', levelDb);
      const needs = boundaryNeeds(side, plan.facing, plan.gain);
      const all = spacingProgram(side, needs);
      const likely = spacingProgram(side, needs, likelyLimits);
      if (likely.need.length < all.need.length) leftOut += 1;
      const pitch = plan.pitch.map((each) => each / settings.basePitch);
      expect(keepsLimits(side, pitch)).toBe(true);
      const cost = (x: Float64Array) => all.cost.reduce((sum, each, at) => sum + each * x[at]!, 0);
      expect(cost(pitch)).toBeWithin(cost(highs(all).x), 1e-8, 1e-9);
      if (!keepsLimits(side, highs(likely).x)) broken += 1;
    }),
    { numRuns: 150 },
  );
  // Both ways are gone.
  expect(leftOut).toBeGreaterThan(20);
  expect(broken).toBeGreaterThan(5);
});

test('a pitch over pitchMax, or one that opens or closes faster than its slew, keeps no limits', () => {
  const settings = settingsWith({
    basePitch: 100e-6,
    pitchMax: 300e-6,
    pitchOpenSlew: 50e-6,
    pitchCloseSlew: 20e-6,
  });
  const side = plannedSide(silent, settings);
  const keeps = (...shares: number[]) => {
    const pitch = new Float64Array(side.count).fill(1);
    pitch.set(shares);
    return keepsLimits(side, pitch);
  };
  expect(keeps()).toBe(true);
  expect(keeps(2.5, 3, 2.8, 2.6, 2.4, 2.2, 2, 1.8, 1.6, 1.4, 1.2)).toBe(true);
  expect(keeps(2.6, 3.1, 2.9, 2.7, 2.5, 2.3, 2.1, 1.9, 1.7, 1.5, 1.3, 1.1)).toBe(false);
  expect(keeps(1, 1.6, 1.4, 1.2)).toBe(false);
  expect(keeps(1, 1.5, 1.2, 1)).toBe(false);
});
