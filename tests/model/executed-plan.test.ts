import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { executedColumns } from '../../src/model/executed-columns.js';
import { diameterAt, executedSpiral, timeAtDiameter } from '../../src/model/executed-spiral.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { planSide } from '../../src/model/plan.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { survives } from '../../src/model/survives.js';
import { emptyMotion } from '../support/empty-motion.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const T = 1.8;

describe('the columns of what is executed', () => {
  test('are those of a side whose plan it is', () => {
    fc.assert(
      fc.property(
        randomMotion({ longestTurns: 3 }),
        fc.constantFrom('machine', 'fixed', 'plan'),
        (motion, executes) => {
          const settings = settingsWith({ executes, rpm: 60 / motion.turnSeconds });
          const request = { levelDb: 3, source: SOUND_SOURCE } as const;
          const forecast = forecastSide(motion, settings, { ...request, planner: 'turn-ahead' });
          const columns = executedColumns(forecast, settings);
          const planner = executes === 'plan' ? 'turn-ahead' : executes;
          const { quarters } = forecastSide(motion, settings, { ...request, planner });
          expect(columns.land).toEqual(quarters.land);
          expect(columns.widthSet).toBeWithin(quarters.widthSet, 1e-15);
          const radius = columns.radius.subarray(0, -1);
          expect(radius).toBeWithin(quarters.radius, 1e-12);
          // What is told of the plan, at another radius: a slope goes with 1/r, a bend with r².
          const planned = forecast.quarters;
          expect(columns.facet.map((facet, at) => facet * radius[at]!)).toBeWithin(
            planned.facetMax.map((facet, at) => facet * planned.radius[at]!),
            1e-15,
            1e-9,
          );
          expect(columns.bend.map((bend, at) => bend / radius[at]! ** 2)).toBeWithin(
            planned.bendMin.map((bend, at) => bend / planned.radius[at]! ** 2),
            1e-15,
            1e-9,
          );
          expect(columns.turnSeconds).toBeWithin(motion.turnSeconds, 1e-12);
          expect(columns.quarterSeconds).toBeWithin(motion.turnSeconds / 4, 1e-12);
          expect(columns).toMatchObject({
            lift: quarters.lift,
            sink: quarters.sink,
            approach: quarters.approach,
            approachLoose: quarters.approachLoose,
            durationSeconds: motion.durationSeconds,
          });
        },
      ),
      { numRuns: 20 },
    );
  });

  test('have the width that is set by hand from its time on, at fixed depth', () => {
    const settings = settingsWith({ ...EXACT, executes: 'fixed' });
    const request = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
    const forecast = forecastSide(emptyMotion(3 * T), settings, request);
    const baseWidth = [
      { fromSeconds: 0.9, width: 60e-6 },
      { fromSeconds: 1.8, width: 55e-6 },
    ];
    const hand = { ...NOTHING_BY_HAND, baseWidth };
    const widths = Array.from({ length: 12 }, (_, at) =>
      at < 2 ? 50.8e-6 : at < 4 ? 60e-6 : 55e-6,
    );
    expect(executedColumns(forecast, settings, hand).widthSet).toBeWithin(widths, 1e-15);
    const still = Array.from({ length: 12 }, () => 50.8e-6);
    expect(executedColumns(forecast, settings).widthSet).toBeWithin(still, 1e-15);
  });

  test('inside the finishing groove are judged as if at its edge', () => {
    const settings = settingsWith({ ...EXACT, executes: 'fixed', finishingDiameter: 0.29 });
    const motion = emptyMotion(20 * T);
    motion.left.velocityPeak.fill(0.1);
    motion.left.accelerationPeak.fill(1000);
    const request = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;
    const forecast = forecastSide(motion, settings, request);
    const { facet, bend } = executedColumns(forecast, settings);
    const speed = (2 * Math.PI * 0.145) / T;
    expect(facet.at(-1)).toBeWithin((Math.SQRT2 * 0.1) / speed, 1e-9);
    expect(bend.at(-1)).toBeWithin(speed ** 2 / 1000, 1e-9);
  });
});

describe('the executed spiral', () => {
  const settings = settingsWith({ ...EXACT, executes: 'fixed', basePitch: 100e-6 });
  const spiralOf = (seconds: number) =>
    executedSpiral(
      forecastSide(emptyMotion(seconds), settings, {
        levelDb: 0,
        planner: 'turn-ahead',
        source: SOUND_SOURCE,
      }),
      settings,
    );

  test('of a program without length is one diameter', () => {
    expect(diameterAt(spiralOf(0), 0)).toBe(settings.startDiameter);
  });

  test('is at its start, and further out, at once; at its end at the end', () => {
    const spiral = spiralOf(18);
    expect(timeAtDiameter(spiral, settings.startDiameter)).toBe(0);
    expect(timeAtDiameter(spiral, settings.startDiameter + 0.01)).toBe(0);
    expect(timeAtDiameter(spiral, settings.startDiameter - 2e-3 + 1e-12)).toBeWithin(18, 1e-6);
    expect(timeAtDiameter(spiral, settings.startDiameter - 2.1e-3)).toBeNull();
  });
});

describe('what a place survives', () => {
  const settings = settingsWith({ ...EXACT, basePitch: 100e-6, pitchOpenSlew: 1 });
  const RATE = 1000;

  test('is any delay where even base pitch would do', () => {
    const side = plannedSide(emptyMotion(10 * T), settings);
    const plan = planSide(side, 'turn-ahead', 0);
    expect(survives(side, plan, 400, null)).toMatchObject({ speed: null, delay: null });
  });

  test('by delay is how long ago the advance was what is needed', () => {
    // The advance rises by 100 µm in 1.8 s from 3.6 s on; 50.8 µm of it is the groove's.
    const basePitch = [{ fromSeconds: 3.6, pitch: 200e-6 }];
    const motion = emptyMotion(10 * T);
    const bin = 180;
    const delayOf = (neededAt: number) => {
      motion.approach[bin] = 100e-6 + (100e-6 * (neededAt - 3.6)) / 1.8 - 50.8e-6;
      const side = plannedSide(motion, settings, { ...NOTHING_BY_HAND, basePitch });
      return survives(side, planSide(side, 'fixed', 0), bin + side.lead * 16, null).delay;
    };
    // The bin begins at 5.0625 s, a quarter of the way into a quarter turn.
    expect(delayOf(5)).toBeWithin(0.0625, 1e-9);
    expect(delayOf(4.6)).toBeWithin(0.4625, 1e-9);
    expect(delayOf(3.6001)).toBeWithin(1.4624, 1e-9);
    expect(delayOf(5.1)).toBe(0);
    // The pitch was never tighter than its base.
    expect(delayOf(3.5)).toBeNull();
  });

  test('by speed goes with the advance at the place of the edge, not at the window’s start', () => {
    // From 3.6 s on the pitch is 200 µm: half a turn later the advance is 150.
    const basePitch = [{ fromSeconds: 3.6, pitch: 200e-6 }];
    const hand = { ...NOTHING_BY_HAND, basePitch };
    const side = plannedSide(emptyMotion(10 * T), settings, hand);
    const plan = planSide(side, 'fixed', 0);
    const margin = 20;
    const survived = (inner: number, shift: number) => {
      const window = {
        rate: RATE,
        startSeconds: 3.6,
        outer: new Float64Array(1000),
        inner: new Float64Array(1000 + 2 * margin),
        margin,
      };
      window.outer[900] = 50e-6;
      window.inner[margin + 900 + shift] = inner;
      return survives(side, plan, 400, window).speed;
    };
    // Free are 150 − 50.8 µm, of which the outer edge takes 50.
    expect(survived(-49.1e-6, 7)).toBeNull();
    expect(survived(-49.3e-6, 7)).toBeWithin(7 / RATE / T, 1e-12);
    expect(survived(-49.3e-6, -7)).toBeWithin(7 / RATE / T, 1e-12);
    expect(survived(-49.3e-6, 0)).toBe(0);
    expect(survived(-49.3e-6, margin)).toBeWithin(margin / RATE / T, 1e-12);
  });
});
