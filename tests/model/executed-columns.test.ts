import { describe, expect, test } from 'vitest';
import { executedColumns } from '../../src/model/executed-columns.js';
import { forecastSide } from '../../src/model/forecast-model.js';
import { settingsWith, summaryOf } from '../analysis/summary-of.js';
import { inventedProgram, RATE } from '../support/invented-program.js';
import { SOUND_SOURCE } from '../support/model-settings.js';

/** Far inside on the disc and narrow, so that machine and plan soon stand at other radii. */
const LATHE = settingsWith({ executes: 'machine', startDiameter: 0.14, basePitch: 85e-6 });

async function columnsOf(planner: 'machine' | 'turn-ahead', settings = LATHE) {
  const motion = await summaryOf(inventedProgram(60, 3), RATE, settings);
  const request = { levelDb: 6, planner, source: SOUND_SOURCE } as const;
  const forecast = forecastSide(motion, settings, request);
  return { forecast, columns: executedColumns(forecast, settings) };
}

describe('what is executed', () => {
  test('is the machine’s land, width, facets and bends, whatever plan is shown beside it', async () => {
    const shown = await columnsOf('machine');
    const beside = await columnsOf('turn-ahead');
    const { quarters } = shown.forecast;
    const { columns } = beside;
    expect(columns.land).toEqual(quarters.land);
    expect(columns.widthSet).toEqual(quarters.widthSet);
    // Groove speed changes inside a quarter turn, by a pitch over four radii at most.
    expect(columns.facet).toBeWithin(quarters.facetMax, 0, 1e-3);
    expect(columns.bend).toBeWithin(quarters.bendMin, 0, 2e-3);
    // The two stand at radii that differ by more than that.
    const [planned, executed] = [beside.forecast.quarters.radius.at(-1), columns.radius.at(-2)];
    expect(Math.abs((planned ?? 0) / (executed ?? 1) - 1)).toBeGreaterThan(4e-3);
  });

  test('at fixed depth is the base width, by hand from its time on', async () => {
    const fixed = settingsWith({ executes: 'fixed' });
    const { forecast } = await columnsOf('turn-ahead', fixed);
    const hand = {
      basePitch: [],
      baseWidth: [{ fromSeconds: 30, width: 60e-6 }],
      bands: [],
      tracks: [],
    };
    const { widthSet, quarterSeconds } = executedColumns(forecast, fixed, hand);
    const change = Math.ceil(30 / quarterSeconds - 1e-9);
    expect(widthSet.subarray(0, change).every((width) => width === fixed.baseWidth)).toBe(true);
    expect(widthSet.subarray(change).every((width) => width === 60e-6)).toBe(true);
    expect(widthSet.length).toBeGreaterThan(change);
  });
});
