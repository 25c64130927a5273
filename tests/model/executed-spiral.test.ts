import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { diameterAt, executedSpiral, timeAtDiameter } from '../../src/model/executed-spiral.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import type { SideForecast } from '../../src/model/forecast-types.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { forecastedFile } from '../support/forecast-fixture.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';
import { randomMotion } from '../support/random-motion.js';

/** What adding up thousands of pitches may cost, m. */
const SUM = 1e-12;
const ABOUT = { levelDb: 0, planner: 'turn-ahead', source: SOUND_SOURCE } as const;

/** A program of silence, cut at base pitch. */
function silentSide(minutes: number, changes: Partial<Settings>) {
  const settings = settingsWith({ ...EXACT, ...changes });
  const motion = emptyMotion(minutes * 60, 60 / settings.rpm);
  return executedSpiral(forecastSide(motion, settings, ABOUT), settings);
}

describe('at constant pitch', () => {
  // 12 inch at 33⅓: pitch = (D_out − D_in)/2 / turns for 85.975 mm of radius.
  test.each([
    [20, 128.96e-6, 'machine'],
    [25, 103.17e-6, 'plan'],
    [30, 85.97e-6, 'fixed'],
  ] as const)('%d min at %s m a turn take 85.975 mm of radius (%s)', (minutes, pitch, executes) => {
    const startDiameter = 0.2926;
    const spiral = silentSide(minutes, { basePitch: pitch, startDiameter, executes });
    const turns = (minutes * 100) / 3;
    // The pitches of the table are rounded to 0.01 µm: half of that on each turn, twice.
    const rounding = 0.01e-6 * turns + SUM;
    expect(diameterAt(spiral, minutes * 60)).toBeWithin(0.12065, rounding);
    for (const share of [0, 0.1, 0.37, 0.5, 0.999]) {
      const expected = startDiameter - 2 * pitch * share * turns;
      expect(diameterAt(spiral, share * minutes * 60)).toBeWithin(expected, SUM);
      expect(timeAtDiameter(spiral, expected)).toBeWithin(share * minutes * 60, 1e-6);
    }
  });

  test('a side that ends between two quarter turns ends there', () => {
    const spiral = silentSide(1.1, { basePitch: 100e-6 });
    const expected = 0.2921 - (2 * 100e-6 * 66) / 1.8;
    expect(66 / 0.45).not.toBe(Math.round(66 / 0.45));
    expect(diameterAt(spiral, 66)).toBeWithin(expected, SUM);
    expect(timeAtDiameter(spiral, expected - 1e-7)).toBeNull();
  });
});

test('where the pitch rises linearly, the diameter falls with the square of the time', () => {
  // Pitch 80 µm + 0.1 µm per quarter turn, held over each: after N quarters Σp = 80·N + 0.1·N(N−1)/2.
  const pitch = Float64Array.from({ length: 400 }, (_, quarter) => 80e-6 + 0.1e-6 * quarter);
  const { forecast } = forecastedFile();
  const quarters = { ...forecast.quarters, machinePitch: pitch };
  const ramp: SideForecast = { ...forecast, durationSeconds: 180, turns: 100, quarters };
  const spiral = executedSpiral(ramp, settingsWith({ startDiameter: 0.25 }));
  for (const count of [1, 37, 200, 400]) {
    const sum = 80e-6 * count + (0.1e-6 * count * (count - 1)) / 2;
    expect(diameterAt(spiral, 0.45 * count)).toBeWithin(0.25 - sum / 2, SUM);
  }
});

test('starts at the start diameter, ends where the executed plan ends, meets each hot spot', () => {
  let spots = 0;
  fc.assert(
    fc.property(randomMotion(), fc.constantFrom('machine', 'plan', 'fixed'), (motion, executes) => {
      const settings = settingsWith({ executes, rpm: 60 / motion.turnSeconds });
      const forecast = forecastSide(motion, settings, ABOUT);
      const spiral = executedSpiral(forecast, settings);
      expect(diameterAt(spiral, 0)).toBe(settings.startDiameter);
      expect(diameterAt(spiral, forecast.durationSeconds)).toBeWithin(
        forecast[executes].endDiameter,
        SUM,
      );
      for (const { atSeconds, radius } of forecast.hotSpots) {
        const diameter = diameterAt(spiral, atSeconds);
        if (diameter === null) continue;
        expect(diameter).toBeWithin(2 * radius, SUM);
        spots += 1;
      }
    }),
    { numRuns: 60 },
  );
  expect(spots).toBeGreaterThan(10);
});

test("the plan's spiral goes through the radius told for each quarter", () => {
  const [motion] = fc.sample(randomMotion({ longestTurns: 9 }), { numRuns: 1, seed: 5 });
  const settings = settingsWith({ executes: 'plan', rpm: 60 / motion!.turnSeconds });
  const forecast = forecastSide(motion!, settings, ABOUT);
  const spiral = executedSpiral(forecast, settings);
  const { atSeconds, radius } = forecast.quarters;
  expect(Array.from(atSeconds, (at) => diameterAt(spiral, at) ?? Number.NaN)).toBeWithin(
    Array.from(radius, (each) => 2 * each),
    SUM,
  );
  expect(atSeconds.length).toBeGreaterThan(4);
});

test('outside of the program there is no diameter, and no time for one', () => {
  const spiral = silentSide(1, { basePitch: 100e-6 });
  expect(diameterAt(spiral, -0.01)).toBeNull();
  expect(diameterAt(spiral, 60.01)).toBeNull();
  expect(timeAtDiameter(spiral, 0.1)).toBeNull();
  expect(timeAtDiameter(spiral, 0.3)).toBe(0);
});
