import { describe, expect, test } from 'vitest';
import { planSide } from '../../src/model/plan.js';
import { placeOfLeast, planReport } from '../../src/model/plan-report.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, settingsWith } from '../support/model-settings.js';

const QUARTER = 0.45;

function reportOf(motion: ReturnType<typeof emptyMotion>, changes: Partial<Settings> = {}) {
  const side = plannedSide(motion, settingsWith({ ...EXACT, ...changes }));
  return planReport(side, verify(side, planSide(side, 'fixed', 0)));
}

describe('the report of a plan', () => {
  test('has the steepest and the most bent quarter, and where they are', () => {
    const motion = emptyMotion(18);
    motion.left.velocityPeak.fill(0.1);
    motion.right.velocityPeak[12] = 0.3;
    motion.right.accelerationPeak.fill(1000);
    motion.left.accelerationPeak[17] = 20_000;
    const report = reportOf(motion, { basePitch: 100e-6 });
    // At the inner end of the quarter, 13 and 18 quarters of 25 µm in.
    const speed = (quarters: number) => (2 * Math.PI * (0.14605 - 25e-6 * quarters)) / 1.8;
    expect(report.facetMax).toBeWithin((Math.SQRT2 * 0.3) / speed(13), 1e-9);
    expect(report.facetMaxAtSeconds).toBeWithin(12 * QUARTER, 1e-9);
    expect(report.bendMin).toBeWithin(speed(18) ** 2 / 20_000, 1e-12);
    expect(report.bendMinAtSeconds).toBeWithin(17 * QUARTER, 1e-9);
  });

  test('has no bend in silence', () => {
    expect(reportOf(emptyMotion(18))).toMatchObject({
      facetMax: 0,
      bendMin: null,
      bendMinAtSeconds: null,
    });
  });

  test('fits as long as room is left', () => {
    const used = 10 * 100e-6;
    const inner = (spare: number) => ({
      basePitch: 100e-6,
      innerDiameter: 0.2921 - 2 * (used + spare),
    });
    expect(reportOf(emptyMotion(18), inner(1e-6))).toMatchObject({ fits: true });
    expect(reportOf(emptyMotion(18), inner(-1e-6))).toMatchObject({ fits: false });
  });

  test('of a program without length has its base pitch', () => {
    const report = reportOf(emptyMotion(0), { basePitch: 100e-6 });
    expect(report).toMatchObject({ radiusUsed: 0, pitchMean: 100e-6, fits: true });
  });
});

describe('where land or width is as good as tied', () => {
  /** A bin of the program's third turn and one of its sixth, the second tighter by so much. */
  function placesWhere(tighter: number) {
    const motion = emptyMotion(18);
    for (const [bin, more] of [
      [2 * 64 + 5, 0],
      [5 * 64 + 7, tighter],
    ] as const) {
      motion.approachLoose[bin] = 20e-6 + more;
      motion.lift[bin] = 5e-6 + more / 2;
    }
    const report = reportOf(motion, { basePitch: 100e-6 });
    return [report.landMinAtSeconds, report.widthMinAtSeconds].map((at) => (at / QUARTER) * 16);
  }

  test('the first place is told', () => {
    for (const place of placesWhere(4e-9)) expect(place).toBeWithin(2 * 64 + 5, 1e-9);
  });

  test('a place that is less by more than lengths are known is told', () => {
    for (const place of placesWhere(12e-9)) expect(place).toBeWithin(5 * 64 + 7, 1e-9);
  });

  test('inside a quarter the first of them is told too', () => {
    const motion = emptyMotion(18);
    motion.approachLoose.fill(20e-6);
    for (const [bin] of motion.approachLoose.entries()) {
      motion.approachLoose[bin] = 20e-6 + (bin % 16) * 0.2e-9;
    }
    const { landMinAtSeconds } = reportOf(motion, { basePitch: 100e-6 });
    expect(landMinAtSeconds).toBeWithin(0, 1e-9);
  });
});

test('of equal places the first is the least', () => {
  expect(placeOfLeast(Float64Array.of(3, 1, 2, 1))).toBe(1);
  expect(placeOfLeast(Float64Array.of(5))).toBe(0);
});
