import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allFindings } from '../../src/model/findings/all-findings.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { headroom, largestLevel, levelBelow } from '../../src/model/level.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { verify } from '../../src/model/verify.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

/** How near the search goes, dB. */
const SEARCH = 0.005;

/** A side of so many minutes in whose outer wall nothing but `outward` moves, in every bin. */
function swaying(minutes: number, outward: number) {
  const motion = emptyMotion(60 * minutes);
  for (const row of [motion.approach, motion.approachLoose, motion.outward]) row.fill(outward);
  return motion;
}

function headroomOf(motion: ReturnType<typeof emptyMotion>, changes: Partial<Settings>) {
  const settings = settingsWith({ ...EXACT, ...changes });
  return forecastSide(motion, settings, {
    levelDb: 0,
    planner: 'turn-ahead',
    source: SOUND_SOURCE,
  }).headroom;
}

describe('headroom', () => {
  test('of silence is the whole search, limited by nothing', () => {
    expect(headroomOf(emptyMotion(60), {})).toEqual({
      fillDb: 12,
      traceDb: 12,
      recommendedDb: 12,
      limitedBy: null,
    });
  });

  test('to trace ends where the motion takes the land of a fixed pitch', () => {
    const changes = { executes: 'fixed', basePitch: 100e-6 } as const;
    const { traceDb, recommendedDb, limitedBy } = headroomOf(swaying(0.2, 20e-6), changes);
    const level = 20 * Math.log10((100e-6 - 50.8e-6) / 20e-6);
    expect(traceDb).toBeWithin(level, SEARCH);
    expect(recommendedDb).toBe(7.5);
    expect(limitedBy?.id).toBe('overcut');
  });

  test('to fill ends where turn-ahead takes the last of the radius', () => {
    // 20 minutes at one pitch fit at 128.6 µm: landMin, the groove, and the motion.
    const radius = (0.2921 - 0.12065) / 2;
    const turns = (20 * 60) / 1.8;
    const motion = swaying(20, 40e-6);
    const { fillDb, recommendedDb, limitedBy } = headroomOf(motion, { executes: 'plan' });
    const level = 20 * Math.log10((radius / turns - 12.7e-6 - 50.8e-6) / 40e-6);
    expect(fillDb).toBeWithin(level, SEARCH);
    expect(recommendedDb).toBe(4);
    expect(limitedBy).toEqual({ id: 'too-long', atSeconds: null });
  });

  test('is null where even −12 dB does not do, and says what stands in the way', () => {
    const changes = { executes: 'fixed', basePitch: 60e-6 } as const;
    const found = headroomOf(swaying(0.2, 60e-6), changes);
    expect(found).toMatchObject({ fillDb: 12, traceDb: null, recommendedDb: null });
    expect(found.limitedBy?.id).toBe('overcut');
    const long = headroomOf(emptyMotion(60 * 60), { executes: 'fixed' });
    expect(long).toMatchObject({ fillDb: null, traceDb: 12, recommendedDb: null });
    expect(long.limitedBy?.id).toBe('too-long');
  });

  test('rounds down to the step of the level control, −0.1 dB to −1 with steps of one', () => {
    const changes = { executes: 'fixed', basePitch: 100e-6, levelStep: 1 } as const;
    const outward = (100e-6 - 50.8e-6) * 10 ** (0.1 / 20);
    expect(headroomOf(swaying(0.2, outward), changes).recommendedDb).toBe(-1);
  });

  test('recommends a level without a fault, whatever the program', () => {
    fc.assert(
      fc.property(
        randomMotion({ longestTurns: 3 }),
        fc.constantFrom('machine', 'turn-ahead', 'fixed'),
        (motion, planner) => {
          const settings = settingsWith({ depthMax: 60e-6, pitchMax: 250e-6 });
          const side = plannedSide(motion, settings);
          const { recommendedDb } = headroom(side, planner);
          if (recommendedDb === null) return;
          const verified = verify(side, planSide(side, planner, recommendedDb));
          const faults = allFindings(side, verified, SOUND_SOURCE).filter(
            ({ severity }) => severity === 'fault',
          );
          expect(faults).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('the search for the largest level', () => {
  test.each([-11.99, -3.3, 0, 0.001, 11.98])('ends just under a limit of %d dB', (limit) => {
    const level = largestLevel((levelDb) => levelDb <= limit);
    expect(level).toBeWithin(limit, SEARCH);
    expect(level).toBeLessThanOrEqual(limit);
  });

  test('takes the upper of two ranges that hold', () => {
    const holds = (levelDb: number) => levelDb < -6 || (levelDb > -2 && levelDb < 3.2);
    expect(largestLevel(holds)).toBeWithin(3.2, SEARCH);
  });
});

describe('the step of the level control under a level', () => {
  test.each([
    [3.7, 0.5, 3.5],
    [3.5, 0.5, 3.5],
    [-0.1, 1, -1],
    [-3.7, 0.25, -3.75],
    [-11.9, 0.5, null],
  ])('of %d dB in steps of %d is %j, above −12', (level, levelStep, expected) => {
    expect(levelBelow(level, levelStep, (levelDb) => levelDb > -12)).toBe(expected);
  });

  test('holds itself, where louder is not always worse', () => {
    expect(levelBelow(3.7, 0.5, (levelDb) => levelDb > 3.6 || levelDb < 2.2)).toBe(2);
  });
});
