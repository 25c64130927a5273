import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forecastSide } from '../../src/model/forecast-model.js';
import type { Planner } from '../../src/settings.js';
import { SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

const [MOTION] = fc.sample(randomMotion({ longestTurns: 4 }), { numRuns: 1, seed: 11 });
const DOUBLE_DB = 20 * Math.log10(2);

function forecastOf(planner: Planner, levelDb = 0, changes = {}) {
  return forecastSide(MOTION!, settingsWith(changes), { levelDb, planner, source: SOUND_SOURCE });
}

describe('the columns', () => {
  test('are those of the plan that was asked for, beside the machine', () => {
    const ahead = forecastOf('turn-ahead').quarters;
    const machine = forecastOf('machine').quarters;
    expect(ahead.machinePitch).toEqual(machine.pitch);
    expect(ahead.machineLand).toEqual(machine.land);
    expect(ahead.pitch).not.toEqual(machine.pitch);
    const fixed = forecastOf('fixed').quarters;
    expect(ahead.fixedPitch).toEqual(fixed.pitch);
    expect(ahead.fixedLand).toEqual(fixed.land);
    expect(fixed.pitch.every((pitch) => pitch === 0.0254 / 300)).toBe(true);
  });

  test('hold the motion at the planned level', () => {
    const [single, double] = [
      forecastOf('fixed').quarters,
      forecastOf('fixed', DOUBLE_DB).quarters,
    ];
    for (const row of ['approach', 'approachLoose', 'lateral', 'lift', 'sink'] as const) {
      expect(double[row]).toBeWithin(
        single[row].map((motion) => 2 * motion),
        1e-15,
      );
      expect(Math.max(...single[row])).toBeGreaterThan(1e-6);
    }
  });

  test('hold the width of the unmodulated groove, the half-width twice', () => {
    const { widthSet, widthMin, widthMax } = forecastOf('fixed').quarters;
    expect(widthSet).toBeWithin(
      widthSet.map(() => 50.8e-6),
      1e-15,
    );
    const { lift, sink } = forecastOf('fixed').quarters;
    expect(widthMin).toBeWithin(
      lift.map((up) => 50.8e-6 - 2 * up),
      1e-15,
    );
    expect(widthMax).toBeWithin(
      sink.map((down) => 50.8e-6 + 2 * down),
      1e-15,
    );
  });

  test('follow the spiral quarter by quarter to the end diameter', () => {
    const { quarters, plan, turns, durationSeconds } = forecastOf('turn-ahead', 6);
    const { radius, pitch, atSeconds } = quarters;
    expect(radius[0]).toBeWithin(0.14605, 1e-12);
    for (let quarter = 1; quarter < radius.length; quarter++) {
      const step = radius[quarter - 1]! - pitch[quarter - 1]! / 4;
      expect(radius[quarter]).toBeWithin(step, 1e-15);
    }
    const rest = (durationSeconds - atSeconds.at(-1)!) / (durationSeconds / turns);
    const end = radius.at(-1)! - pitch.at(-1)! * rest;
    expect(plan.endDiameter).toBeWithin(2 * end, 1e-12);
  });
});

describe('what the lathe executes', () => {
  test.each(['machine', 'fixed', 'plan'] as const)(
    '%s is what findings, headroom and hot spots are about',
    (executes) => {
      const planner = executes === 'plan' ? 'turn-ahead' : executes;
      const shownElsewhere = forecastOf('fixed', 3, { executes });
      const asPlan = forecastOf(planner, 3, { executes: 'plan' });
      const executed =
        executes === 'plan' ? forecastOf('turn-ahead', 3, { executes }) : shownElsewhere;
      expect(executed.findings).toEqual(asPlan.findings);
      expect(executed.headroom).toEqual(asPlan.headroom);
      expect(executed.hotSpots).toEqual(asPlan.hotSpots);
      expect(executed.verdict).toBe(asPlan.verdict);
    },
  );

  test('makes a difference to them', () => {
    const [machine, fixed] = (['machine', 'fixed'] as const).map((executes) =>
      forecastOf('turn-ahead', 3, { executes }),
    );
    expect(machine!.headroom).not.toEqual(fixed!.headroom);
    expect(machine!.hotSpots).not.toEqual(fixed!.hotSpots);
  });
});

test('the same input gives the same forecast, and every number is finite or null', () => {
  const forecast = forecastOf('turn-ahead', 6);
  expect(forecastOf('turn-ahead', 6)).toEqual(forecast);
  const { quarters, ...rest } = forecast;
  const { bendMin, ...columns } = quarters;
  for (const column of Object.values(columns)) expect(column.every(Number.isFinite)).toBe(true);
  // NaN stands for a quarter without a bend.
  expect(bendMin.every((radius) => Number.isNaN(radius) || Number.isFinite(radius))).toBe(true);
  const told = JSON.stringify(rest, (_, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? 'not finite' : value,
  );
  expect(told).not.toContain('not finite');
});

test('at half speed the groove is the same: pitch, land and findings, but for the head', () => {
  const [full, half] = [1, 0.5].map((speedFactor) => forecastOf('turn-ahead', 3, { speedFactor }));
  const { headLoad, ...groove } = half!;
  const { headLoad: atFull, ...same } = full!;
  expect(groove).toEqual(same);
  // A second of the lathe holds one quarter turn instead of two: at most twice a sixteenth.
  expect(headLoad.left.oneSecond).toBeLessThanOrEqual(atFull.left.oneSecond / 8);
});
