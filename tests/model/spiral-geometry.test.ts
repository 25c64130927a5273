import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BINS_PER_QUARTER } from '../../src/analysis/motion.js';
import { radiusAt } from '../../src/model/bands.js';
import { spiralRadius, turnAdvance } from '../../src/model/disc.js';
import { facingHalfWidths } from '../../src/model/facing-half-widths.js';
import { cutDepth, halfWidthAt } from '../../src/model/groove.js';
import { valueAt } from '../../src/model/nodes.js';
import { nominalLand } from '../../src/model/nominal-land.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import { emptyMotion } from '../support/empty-motion.js';
import { settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

test('a spiral of four quarters a turn lies further out before its start, further in after it', () => {
  const pitch = Float64Array.of(4, 8, 12, 16);
  expect(spiralRadius(pitch, 2, 100)).toEqual(Float64Array.of(103, 102, 100, 97, 93));
  // Over the last turn: 20 before the planned quarters.
  expect(turnAdvance(pitch, 20)).toEqual(Float64Array.of(20, 16, 13, 11, 10));
});

test('the half-width a turn ago is the first one until a turn has been planned', () => {
  const facing = facingHalfWidths(Float64Array.of(1, 2, 3, 4, 5, 6), 10);
  expect(facing).toEqual(Float64Array.of(11, 12, 13, 14, 6, 8));
});

test('a groove cut to a depth is so wide that its cut is that deep', () => {
  const micrometres = fc.integer({ min: 0, max: 100 }).map((um) => um * 1e-6);
  fc.assert(
    fc.property(micrometres, micrometres, (depth, bottomRadius) => {
      const width = 2 * halfWidthAt(depth, bottomRadius);
      expect(cutDepth(width, bottomRadius)).toBeWithin(depth, 1e-18);
      // A tip of radius ρ stays (√2 − 1)·ρ above the apex: the groove is wider than 2·depth.
      expect(width).toBeWithin(2 * depth + 2 * (Math.SQRT2 - 1) * bottomRadius, 1e-18);
    }),
  );
});

describe('what is linear between nodes', () => {
  const side = plannedSide(emptyMotion(3.6), settingsWith());
  const nodes = Float64Array.from({ length: side.count + 1 }, (_, node) => node ** 2);

  test.each([
    // Planned quarters from one turn before the program on, 0.45 s each.
    [0, 16],
    [0.45, 25],
    [0.225, 20.5],
    [-1.8, 0],
    [-9, 0],
    [99, 256],
  ])('at %d s is %d: its ends go on for ever', (at, expected) => {
    expect(side.count).toBe(16);
    expect(valueAt(side, nodes, at)).toBeWithin(expected, 1e-9);
  });

  test('is the radius, outside of the planned quarters that of their ends', () => {
    const plan = planSide(side, 'fixed', 0);
    expect(radiusAt(side, plan, -99)).toBe(plan.radius[0]);
    expect(radiusAt(side, plan, 99)).toBeWithin(plan.radius[side.count]!, 1e-15);
    expect(radiusAt(side, plan, 0)).toBe(plan.radius[side.lead]);
  });
});

test('the least land of a quarter’s bins without tolerances is that of its plan', () => {
  fc.assert(
    fc.property(randomMotion(), fc.constantFrom('machine', 'turn-ahead'), (motion, planner) => {
      const side = plannedSide(motion, settingsWith());
      const plan = planSide(side, planner, 3);
      const { landNominal } = verify(side, plan);
      for (let quarter = 0; quarter < side.count; quarter++) {
        const bins = Array.from({ length: BINS_PER_QUARTER }, (_, at) =>
          nominalLand(side, plan, quarter * BINS_PER_QUARTER + at),
        );
        expect(Math.min(...bins)).toBeWithin(landNominal[quarter]!, 1e-15);
      }
    }),
    { numRuns: 30 },
  );
});
