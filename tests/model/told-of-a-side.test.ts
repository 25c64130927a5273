import { describe, expect, test } from 'vitest';
import { isAboutWholeSide } from '../../src/model/findings/whole-side.js';
import { forecastSide, type SideRequest } from '../../src/model/forecast-model.js';
import { planSide } from '../../src/model/plan.js';
import { planReport, radiusUsed } from '../../src/model/plan-report.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { runningOrder } from '../../src/model/running-order.js';
import { verify } from '../../src/model/verify.js';
import type { Planner } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingsOf, said } from '../support/findings-of.js';
import { findingWith } from '../support/forecast-fixture.js';
import { swayingMotion } from '../support/loud-passages.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { fillHistogram } from '../support/motion-of.js';

const T = 1.8;
const QUARTER = T / 4;

describe('a forecast', () => {
  const settings = settingsWith({ ...EXACT, executes: 'plan' });
  const motion = swayingMotion(9, 20e-6, [{ from: 3.6, until: 5.4, outward: 60e-6 }]);
  const forecastBy = (planner: Planner, more: Partial<SideRequest> = {}) =>
    forecastSide(motion, settings, { levelDb: 0, planner, source: SOUND_SOURCE, ...more });
  const side = plannedSide(motion, settings);

  test.each(['machine', 'fixed', 'turn-ahead', 'tightest'] as const)(
    'by %s reports that plan, beside the machine’s and the fixed one',
    (planner) => {
      const told = forecastBy(planner);
      const reported = (by: Planner) => planReport(side, verify(side, planSide(side, by, 0)));
      expect(told).toMatchObject({ planner, levelDb: 0, executes: 'plan' });
      expect(told.plan).toEqual(reported(planner));
      expect(told.machine).toEqual(reported('machine'));
      expect(told.fixed).toEqual(reported('fixed'));
    },
  );

  test('says the least radius that any plan takes, whichever it is about', () => {
    const least = radiusUsed(side, planSide(side, 'tightest', 0));
    for (const planner of ['turn-ahead', 'tightest'] as const) {
      expect(forecastBy(planner).tightest?.radiusUsed).toBeWithin(least, 1e-12);
    }
  });

  test('of one file has no tracks and no order, unless an order is asked for', () => {
    const plain = forecastBy('turn-ahead');
    expect(plain).not.toHaveProperty('tracks');
    expect(plain).not.toHaveProperty('order');
    expect(forecastBy('turn-ahead', { order: true })).toHaveProperty('order', null);
  });

  test('takes a headroom that is known as it is', () => {
    const headroom = { fillDb: 1, traceDb: 2, recommendedDb: 1, limitedBy: null };
    expect(forecastBy('turn-ahead', { headroom }).headroom).toBe(headroom);
  });
});

test.each([
  ['without a place', { id: 'dc-offset', atSeconds: null }, true],
  ['the first clip', { id: 'clipped', atSeconds: 3 }, true],
  ['where the spiral passes its limit', { id: 'too-long', atSeconds: 3 }, true],
  [
    'little room for the lead-out',
    { id: 'off-standard', atSeconds: 3, detail: 'lead-out-room' },
    true,
  ],
  ['a band off standard', { id: 'off-standard', atSeconds: 3, detail: 'band' }, false],
  ['land', { id: 'land-low', atSeconds: 3 }, false],
] as const)('a finding about the whole side: %s', (_, finding, expected) => {
  expect(isAboutWholeSide(findingWith(finding))).toBe(expected);
});

describe('seconds that are too steep', () => {
  /** Ten turns in which so many of 100 samples of some quarters are steep, on each wall. */
  function steep(shares: Readonly<Record<number, readonly [left: number, right: number]>>) {
    const motion = emptyMotion(10 * T);
    for (const [wall, side] of [
      [motion.left, 0],
      [motion.right, 1],
    ] as const) {
      for (let quarter = 0; quarter < 40; quarter++) {
        const loud = shares[quarter]?.[side] ?? 0;
        const samples = Array.from({ length: 100 }, (_, at) => (at < loud ? 1.5 : 1e-3));
        fillHistogram(wall.edgeVelocityHistogram, quarter, samples);
      }
      wall.velocityPeak.fill(1.5);
      wall.velocityMeanSquare.fill(1e-4);
    }
    return motion;
  }

  test('have the share of the worst of them, and wall and frequency of its worst quarter', () => {
    const motion = steep({ 20: [4, 4], 21: [30, 0], 22: [8, 8] });
    // 21 is brightest on the left, its neighbours on the right.
    motion.left.accelerationMeanSquare.fill(1e-4 * (2 * Math.PI * 9000) ** 2, 21, 22);
    motion.right.accelerationMeanSquare.fill(1e-4 * (2 * Math.PI * 5000) ** 2, 20, 21);
    motion.right.accelerationMeanSquare.fill(1e-4 * (2 * Math.PI * 6000) ** 2, 22, 23);
    const { findings } = findingsOf(motion);
    expect(said(findings)).toEqual(['facet fault']);
    const [facet] = findings;
    // Windows of two quarters: 30 and 8 of 200 samples.
    expect(facet?.value).toBeWithin(0.19, 1e-12);
    expect(facet).toMatchObject({ wall: 'left', limit: 0.01, unit: 'ratio' });
    expect(facet?.frequency).toBeWithin(9000, 1e-6);
    expect(facet?.atSeconds).toBeWithin(19 * QUARTER, 1e-9);
    expect(facet?.untilSeconds).toBeWithin(24 * QUARTER, 1e-9);
  });

  test.each([
    [2.1, 1, 'left'],
    [1.9, 1, 'both'],
    [1, 1.9, 'both'],
    [1, 2.1, 'right'],
  ] as const)(
    'are of the wall with more than twice the bends: %d to %d, %s',
    (left, right, wall) => {
      const motion = steep({ 20: [30, 30] });
      motion.left.accelerationMeanSquare.fill(left * 1e6);
      motion.right.accelerationMeanSquare.fill(right * 1e6);
      expect(findingsOf(motion).findings[0]).toMatchObject({ id: 'facet', wall });
    },
  );

  test('are not the quarter behind their last window', () => {
    const motion = steep({ 20: [30, 30], 22: [2, 2] });
    motion.left.accelerationMeanSquare.fill(1e6, 22, 23);
    motion.right.accelerationMeanSquare.fill(1e6, 20, 21);
    expect(findingsOf(motion).findings[0]).toMatchObject({ value: 0.15, wall: 'right' });
  });
});

test('what is off the standards is a length, in metres', () => {
  const [finding] = findingsOf(emptyMotion(18), { startDiameter: 0.295 }).findings;
  expect(finding).toMatchObject({ id: 'off-standard', unit: 'metre', value: 0.295 });
});

test('what is too long has its unit too', () => {
  const { findings } = findingsOf(emptyMotion(600), { innerDiameter: 0.28 });
  expect(findings[0]).toMatchObject({ id: 'too-long', unit: 'metre', limit: 0.28 });
});

test('twelve tracks are looked at in every order, thirteen are not', () => {
  const tracks = (count: number) =>
    Array.from({ length: count }, (_, at) => ({
      name: `${at}`,
      isPinned: at > 1,
      radiusUsed: 1e-3,
      tightAt: () => 1,
    }));
  expect(runningOrder(tracks(12), 0.14, []).isExhaustive).toBe(true);
  expect(runningOrder(tracks(13), 0.14, []).isExhaustive).toBe(false);
});
