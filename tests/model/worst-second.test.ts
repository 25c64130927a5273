import { describe, expect, test } from 'vitest';
import { forecastSide } from '../../src/model/forecast-model.js';
import { rankedHistogram, samplesIn, samplesOver } from '../../src/model/histogram-share.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { traceWalls } from '../../src/model/tracing.js';
import { bendShares, facetShares, worstShare } from '../../src/model/worst-second.js';
import { emptyMotion } from '../support/empty-motion.js';
import { SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { fillHistogram, motionOf } from '../support/motion-of.js';

/** A wall that moves at 5 kHz, amplitude in m. */
const tone = (amplitude: number) => (at: number) => amplitude * Math.sin(2 * Math.PI * 5000 * at);
/** Share of the time that |sin| is over x: arcsine law. */
const shareOver = (x: number) => (x >= 1 ? 0 : 1 - (2 / Math.PI) * Math.asin(x));

const HALF_TURN = { turns: 0.5, left: tone(0), right: tone(4e-6) };
const SIDE = plannedSide(motionOf(HALF_TURN), settingsWith());
const SPEED = (2 * Math.PI * 0.14605) / 1.8;
const EDGE_SLOPE = (Math.SQRT2 * 4e-6 * 2 * Math.PI * 5000) / SPEED;

describe('facet and bend', () => {
  test('of a sine are √2·v/V and V²/a of the moving wall', () => {
    const { facet, bend } = traceWalls(SIDE, planSide(SIDE, 'fixed', 0));
    expect(facet[4]).toBeWithin(EDGE_SLOPE, 0, 0.001);
    expect(bend[4]).toBeWithin(SPEED ** 2 / (4e-6 * (2 * Math.PI * 5000) ** 2), 0, 0.002);
    expect([facet[3], bend[3]]).toEqual([0, Number.POSITIVE_INFINITY]);
  });

  test('double and halve with the double level', () => {
    const at = (levelDb: number) => traceWalls(SIDE, planSide(SIDE, 'fixed', levelDb));
    const double = at(20 * Math.log10(2));
    expect(double.facet[4]).toBeWithin(2 * at(0).facet[4]!, 0, 1e-12);
    expect(double.bend[4]).toBeWithin(at(0).bend[4]! / 2, 0, 1e-12);
  });

  test('inside the finishing groove stay what they are at its edge, and finite', () => {
    const settings = settingsWith({ basePitch: 4e-4 });
    const motion = emptyMotion(600 * 1.8);
    motion.left.velocityPeak.fill(0.1);
    motion.left.accelerationPeak.fill(1000);
    const side = plannedSide(motion, settings);
    const plan = planSide(side, 'fixed', 0);
    expect(plan.radius.at(-1)).toBeLessThan(0);
    const edge = (2 * Math.PI * settings.finishingDiameter) / 2 / 1.8;
    const last = side.lead + side.programCount - 1;
    expect(traceWalls(side, plan).facet[last]).toBeWithin((Math.SQRT2 * 0.1) / edge, 0, 1e-12);
  });
});

describe('share of the worst second', () => {
  test.each([0.3, 0.5, 0.7, 0.9, 0.97, 1.01])('of a sine over %d of its peak', (part) => {
    const plan = planSide(SIDE, 'fixed', 0);
    const shares = facetShares(SIDE, plan, part * EDGE_SLOPE);
    // Inside a class of 1.5 dB the share is interpolated; a sine crowds at the top of its highest.
    expect(worstShare(shares)).toBeWithin(shareOver(part), 0.09);
    const tip = part < 1 ? SPEED ** 2 / (4e-6 * (2 * Math.PI * 5000) ** 2) / part : 1e-9;
    expect(worstShare(bendShares(SIDE, plan, tip))).toBeWithin(
      part < 1 ? shareOver(part) : 0,
      0.09,
    );
  });

  test('at double the level is that of half the facet limit and twice the tip', () => {
    const [single, double] = [0, 20 * Math.log10(2)].map((db) => planSide(SIDE, 'fixed', db));
    for (const part of [0.4, 0.6, 0.8]) {
      const limit = part * EDGE_SLOPE;
      const facet = worstShare(facetShares(SIDE, double!, 2 * limit));
      expect(facet).toBeWithin(worstShare(facetShares(SIDE, single!, limit)), 1e-9);
      const tip = SPEED ** 2 / (4e-6 * (2 * Math.PI * 5000) ** 2) / part;
      const bend = worstShare(bendShares(SIDE, double!, tip / 2));
      expect(bend).toBeWithin(worstShare(bendShares(SIDE, single!, tip)), 1e-9);
    }
  });

  test('is the worse wall, in the whole quarters nearest to a second', () => {
    for (const [turnSeconds, quarters] of [
      [1.8, 2],
      [4 / 3, 3],
    ] as const) {
      const motion = emptyMotion(3 * turnSeconds, turnSeconds);
      const histogram = motion.right.edgeVelocityHistogram;
      motion.right.velocityPeak.fill(1);
      for (let quarter = 0; quarter < 12; quarter++) {
        fillHistogram(
          histogram,
          quarter,
          Array.from({ length: 100 }, () => (quarter === 5 ? 1 : 0.001)),
        );
        fillHistogram(
          motion.left.edgeVelocityHistogram,
          quarter,
          Array.from({ length: 100 }, () => 0.001),
        );
      }
      const side = plannedSide(motion, settingsWith({ rpm: 60 / turnSeconds }));
      const shares = facetShares(side, planSide(side, 'fixed', 0), 0.5);
      expect(shares.quarters).toBe(quarters);
      expect(worstShare(shares)).toBeWithin(1 / quarters, 1e-12);
      expect(shares.shares.indexOf(worstShare(shares))).toBe(6 - quarters);
    }
  });

  test('counts every sample over a limit under all classes, none over one above them', () => {
    const { accelerationHistogram, accelerationPeak } = motionOf(HALF_TURN).right;
    const histogram = rankedHistogram(accelerationHistogram, accelerationPeak);
    expect(samplesOver(histogram, 0, 1e-9)).toBe(samplesIn(histogram, 0));
    expect(samplesOver(histogram, 0, accelerationPeak[0]! * 1.000001)).toBe(0);
  });

  test('falls as the limit rises', () => {
    const { accelerationHistogram, accelerationPeak } = motionOf(HALF_TURN).right;
    const histogram = rankedHistogram(accelerationHistogram, accelerationPeak);
    let before = Number.POSITIVE_INFINITY;
    for (let limit = 10; limit < 5000; limit *= 1.05) {
      const over = samplesOver(histogram, 0, limit);
      expect(over).toBeLessThanOrEqual(before);
      before = over;
    }
  });

  test('is 0 in silence, and there is no bend', () => {
    const forecast = forecastSide(emptyMotion(3.6), settingsWith(), {
      levelDb: 0,
      planner: 'turn-ahead',
      source: SOUND_SOURCE,
    });
    expect(forecast.plan).toMatchObject({
      facetMax: 0,
      bendMin: null,
      bendMinAtSeconds: null,
      bendShareSpherical: 0,
      bendShareLine: 0,
    });
    expect(forecast.quarters.bendMin.every(Number.isNaN)).toBe(true);
  });
});
