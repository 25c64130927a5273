import { describe, expect, test } from 'vitest';
import { headroom, largestLevel } from '../../src/model/level.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { traceLimit } from '../../src/model/trace-limit.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { swayingMotion } from '../support/loud-passages.js';
import { EXACT, settingsWith } from '../support/model-settings.js';
import { fillHistogram } from '../support/motion-of.js';

const T = 1.8;
const QUARTER = T / 4;
const FIXED = { ...EXACT, executes: 'fixed', basePitch: 100e-6 } as const;
/** Land of the unmodulated groove. */
const OPEN = 100e-6 - 50.8e-6;

function sideOf(motion: ReturnType<typeof emptyMotion>, changes: Partial<Settings> = {}) {
  return plannedSide(motion, settingsWith({ ...FIXED, ...changes }));
}

function limitOf(motion: ReturnType<typeof emptyMotion>, changes: Partial<Settings> = {}) {
  const side = sideOf(motion, changes);
  return traceLimit(side, planSide(side, changes.executes === 'plan' ? 'turn-ahead' : 'fixed', 0));
}

/** Ten turns of which all of one quarter moves or bends at `magnitude`. */
function steepAt(quarter: number, row: 'edgeVelocity' | 'acceleration', magnitude: number) {
  const motion = emptyMotion(10 * T);
  const samples = Array.from({ length: 100 }, () => magnitude);
  for (let at = 0; at < 40; at++) {
    fillHistogram(motion.left[`${row}Histogram`], at, at === quarter ? samples : [1e-3]);
  }
  motion.left.velocityPeak.fill(row === 'edgeVelocity' ? magnitude / Math.SQRT2 : 1e-3);
  motion.left.accelerationPeak.fill(row === 'acceleration' ? magnitude : 1);
  return motion;
}

describe('what stops a level', () => {
  test('is nothing in silence', () => {
    expect(limitOf(emptyMotion(10 * T))).toBeNull();
  });

  test('is a groove that is too narrow, where it is', () => {
    const motion = emptyMotion(10 * T);
    motion.lift[20 * 16 + 5] = 13e-6;
    expect(limitOf(motion)).toEqual({ id: 'lift', atSeconds: 20 * QUARTER + (5 * QUARTER) / 16 });
  });

  test('is one that is too deep, from its quarter on', () => {
    const motion = emptyMotion(10 * T);
    motion.sink[20 * 16 + 5] = 13e-6;
    const limit = limitOf(motion, { depthMax: 30e-6 });
    expect(limit).toEqual({ id: 'too-deep', atSeconds: 20 * QUARTER });
  });

  test('is an overcut, but not of the first silent turn, which faces the lead-in', () => {
    const motion = emptyMotion(10 * T);
    motion.approachLoose[20 * 16 + 5] = OPEN + 1e-6;
    expect(limitOf(motion)?.id).toBe('overcut');
    expect(limitOf(motion)?.atSeconds).toBeWithin(20 * QUARTER + (5 * QUARTER) / 16, 1e-9);
    const first = emptyMotion(10 * T);
    first.approachLoose[0] = OPEN + 1e-6;
    expect(limitOf(first)).toEqual({ id: 'overcut', atSeconds: 0 });
    // Silence itself overcuts, everywhere: told from the second planned turn on.
    expect(limitOf(emptyMotion(10 * T), { baseWidth: 101e-6 })?.atSeconds).toBe(0);
  });

  test('is a pitch that may not open so far', () => {
    const motion = emptyMotion(10 * T);
    motion.approachLoose[20 * 16] = OPEN + 40e-6;
    // 50.8 + 89.2 + 12.7 µm are wanted; at 145 there is some land, but less than landMin.
    const limit = limitOf(motion, { executes: 'plan', pitchMax: 145e-6 });
    expect(limit?.id).toBe('pitch-limit');
    expect(limit?.atSeconds).toBeWithin(20 * QUARTER, 1e-9);
  });

  test.each([
    ['facet', 'edgeVelocity', 1.5],
    ['tight-bend', 'acceleration', 60_000],
  ] as const)('is a second of %s, from its start', (id, row, magnitude) => {
    const limit = limitOf(steepAt(20, row, magnitude));
    expect(limit?.id).toBe(id);
    // The first of the windows of two quarters that hold quarter 20.
    expect(limit?.atSeconds).toBeWithin(19 * QUARTER, 1e-9);
  });
});

describe('what a headroom is limited by', () => {
  test('is what breaks at −12 dB where a side is too long at any level', () => {
    // An overcut from −3 dB on, but −12 dB traces: what stands in the way is the length.
    const motion = swayingMotion(600, OPEN * 10 ** (3 / 20));
    const innerDiameter = 0.2921 - 0.05;
    const { fillDb, traceDb, recommendedDb, limitedBy } = headroom(
      sideOf(motion, { innerDiameter }),
      'fixed',
    );
    expect(fillDb).toBeNull();
    expect(traceDb).toBeWithin(-3, 1 / 200);
    expect(recommendedDb).toBeNull();
    expect(limitedBy).toEqual({ id: 'too-long', atSeconds: null });
  });

  test('is what breaks at −12 dB where no level traces', () => {
    const motion = emptyMotion(10 * T);
    motion.approachLoose[20 * 16] = OPEN * 10 ** (13 / 20);
    // Earlier, and only above −2 dB.
    motion.lift[10 * 16] = 12.7e-6 * 10 ** (2 / 20);
    expect(headroom(sideOf(motion), 'fixed')).toMatchObject({
      fillDb: 12,
      traceDb: null,
      recommendedDb: null,
      limitedBy: { id: 'overcut' },
    });
  });

  test('is nothing where +12 dB holds, whatever would break just above', () => {
    const motion = swayingMotion(18, OPEN / 10 ** (12.001 / 20));
    const { traceDb, limitedBy } = headroom(sideOf(motion), 'fixed');
    expect(traceDb).toBe(12);
    expect(limitedBy).toBeNull();
  });

  test('is what the next level up breaks', () => {
    const motion = swayingMotion(18, OPEN / 10 ** (5.3 / 20));
    const { traceDb, limitedBy } = headroom(sideOf(motion), 'fixed');
    expect(traceDb).toBeWithin(5.3, 1 / 256);
    expect(limitedBy).toEqual({ id: 'overcut', atSeconds: 0 });
  });
});

test.each([-7.3, 0.1, 5.77])('a level of %d dB is searched down to 1/256 dB', (limit) => {
  const level = largestLevel((levelDb) => levelDb <= limit) ?? Number.NaN;
  expect(level * 256).toBe(Math.floor(limit * 256));
});
