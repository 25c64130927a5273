import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LENGTH_MARGIN } from '../../src/model/limits.js';
import { type Plan, planSide } from '../../src/model/plan.js';
import { planReport } from '../../src/model/plan-report.js';
import { type PlannedSide, plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import { emptyMotion } from '../support/empty-motion.js';
import { settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const level = fc.double({ min: -12, max: 12, noNaN: true });
const planner = fc.constantFrom('machine', 'turn-ahead', 'fixed');

/** Half-width at a time in planned quarters, linear between nodes, base width before them. */
function halfWidthAt({ settings }: PlannedSide, { halfWidth }: Plan, at: number): number {
  const node = Math.min(Math.floor(at), halfWidth.length - 2);
  const nodeAt = (index: number) => (index < 0 ? settings.baseWidth / 2 : halfWidth[index]!);
  return nodeAt(node) + (nodeAt(node + 1) - nodeAt(node)) * (at - node);
}

/** The pitch integrated over the last turn: every quarter by how much of it lies in there. */
function advanceAt({ settings }: PlannedSide, { pitch }: Plan, at: number): number {
  let sum = 0;
  for (let quarter = Math.floor(at) - 4; quarter <= at; quarter++) {
    const inside = Math.min(at, quarter + 1) - Math.max(at - 4, quarter);
    sum += Math.max(0, inside) * (quarter < 0 ? settings.basePitch : (pitch[quarter] ?? 0));
  }
  return sum / 4;
}

describe('what a plan leaves', () => {
  test('is the least over both ends of every bin, straight from the definitions', () => {
    fc.assert(
      fc.property(randomMotion({ longestTurns: 2 }), level, planner, (motion, levelDb, by) => {
        const side = plannedSide(motion, settingsWith());
        const plan = planSide(side, by, levelDb);
        const { land, landNominal, widthMin, widthMax } = verify(side, plan);
        for (let quarter = 0; quarter < side.count; quarter++) {
          const least = [1, 1, 1];
          let most = 0;
          for (let bin = 16 * quarter; bin < 16 * quarter + 16; bin++) {
            for (const at of [bin / 16, (bin + 1) / 16]) {
              const h = halfWidthAt(side, plan, at);
              const open = advanceAt(side, plan, at) - halfWidthAt(side, plan, at - 4) - h;
              const { gain } = plan;
              least[0] = Math.min(least[0]!, open - gain * side.approachLoose[bin]! - 6.5e-6);
              least[1] = Math.min(least[1]!, open - gain * side.approach[bin]!);
              least[2] = Math.min(least[2]!, 2 * (h - gain * side.lift[bin]!));
              most = Math.max(most, 2 * (h + gain * side.sink[bin]!));
            }
          }
          const got = [land[quarter]!, landNominal[quarter]!, widthMin[quarter]!];
          expect(got).toBeWithin(least, 1e-14);
          expect(widthMax[quarter]).toBeWithin(most, 1e-14);
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe('the report of a plan', () => {
  test('has its extremes over all planned quarters, at places that hold them', () => {
    fc.assert(
      fc.property(randomMotion({ longestTurns: 3 }), planner, (motion, by) => {
        const side = plannedSide(motion, settingsWith());
        const verified = verify(side, planSide(side, by, 0));
        const report = planReport(side, verified);
        expect(report.landMin).toBe(Math.min(...verified.land));
        expect(report.widthMin).toBe(Math.min(...verified.widthMin));
        expect(report.widthMax).toBe(Math.max(...verified.widthMax));
        const quarterOf = (at: number) => Math.floor(at / side.quarterSeconds + side.lead + 1e-6);
        const landThere = verified.land[quarterOf(report.landMinAtSeconds)] ?? 0;
        expect(landThere).toBeWithin(report.landMin, LENGTH_MARGIN);
        const widthThere = verified.widthMin[quarterOf(report.widthMinAtSeconds)] ?? 0;
        expect(widthThere).toBeWithin(report.widthMin, LENGTH_MARGIN);
        for (const value of Object.values(report)) expect(value).not.toBeNaN();
      }),
      { numRuns: 30 },
    );
  });

  test('has the pitch of the program, up to the one in force at its end', () => {
    const motion = emptyMotion(2 * 1.8);
    const side = plannedSide(motion, settingsWith({ executes: 'plan' }));
    const plan = planSide(side, 'fixed', 0);
    const pitch = plan.pitch.map((_, quarter) => 100e-6 + quarter * 1e-6);
    const report = planReport(side, verify(side, { ...plan, pitch }));
    // Quarters −4 … 7 have indices 0 … 11; quarter 8 begins with the end.
    expect(report.pitchMin).toBeWithin(104e-6, 1e-15);
    expect(report.pitchMax).toBeWithin(112e-6, 1e-15);
    expect(report.pitchMean).toBeWithin(107.5e-6, 1e-15);
  });

  test('counts the part of the last quarter that the program fills', () => {
    const side = plannedSide(emptyMotion(1.3 * 1.8), settingsWith());
    const report = planReport(side, verify(side, planSide(side, 'fixed', 0)));
    expect(report.radiusUsed).toBeWithin((1.3 * 0.0254) / 300, 1e-15);
    expect(report.spare).toBeWithin((0.2921 - 0.12065) / 2 - report.radiusUsed, 1e-15);
    expect(report.endDiameter).toBeWithin(0.2921 - 2 * report.radiusUsed, 1e-15);
  });
});
