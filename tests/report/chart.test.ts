import { Chalk } from 'chalk';
import { describe, expect, test } from 'vitest';
import type { QuarterColumns, SideForecast } from '../../src/model/forecast-types.js';
import { type ChartOptions, chart } from '../../src/report/chart.js';
import { chartSeries } from '../../src/report/chart-series.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const OPTIONS = {
  units: 'metric',
  paint: new Chalk({ level: 0 }),
  columns: 100,
  ascii: false,
} as const;
const QUARTERS = 400;

/** Columns of an invented side: base pitch, 30 µm of land, but for what a test wants. */
function columnsWith(changes: Partial<QuarterColumns> = {}): QuarterColumns {
  const filled = (value: number) => new Float64Array(QUARTERS).fill(value);
  const { quarters } = forecastedFile().forecast;
  return {
    ...quarters,
    pitch: filled(90e-6),
    machinePitch: filled(100e-6),
    fixedPitch: filled(80e-6),
    land: filled(30e-6),
    machineLand: filled(35e-6),
    fixedLand: filled(25e-6),
    approachLoose: filled(2e-6),
    ...changes,
  };
}

function drawn(forecast: Partial<SideForecast>, options: Partial<ChartOptions> = {}): string[] {
  return chart(forecastedFile({}, { findings: [], hotSpots: [], ...forecast }), {
    ...OPTIONS,
    ...options,
  });
}

/** The land of one quarter among many. */
function landWith(value: number): Float64Array {
  const land = new Float64Array(QUARTERS).fill(35e-6);
  land[321] = value;
  return land;
}

describe('the chart', () => {
  test('shows a single quarter of overcut under the line of zero, at its place', () => {
    const quarters = columnsWith({ machineLand: landWith(-0.5e-6) });
    const lines = drawn({ quarters });
    const under = lines.find((line) => line.trimStart().startsWith('-0.5 µm')) ?? '';
    const at = /[\u2801-\u28ff]/.exec(under)?.index ?? 0;
    // 82 cells behind 18 columns; the quarter is the 321st of 400.
    expect(at - 18).toBe(Math.floor((321 / 400) * 82));
    expect(under.match(/[\u2801-\u28ff]/g)).toHaveLength(1);
  });

  test('has no row under zero where there is no overcut', () => {
    const text = drawn({ quarters: columnsWith() }).join('\n');
    expect(text).toMatch(/^ +0 _+/m);
    expect(text).not.toMatch(/^ +-/m);
  });

  test('shows land between zero and the limit in a row of its own', () => {
    const lines = drawn({ quarters: columnsWith({ machineLand: landWith(6e-6) }) });
    const zero = lines.find((line) => /^ +0 /.test(line)) ?? '';
    expect(zero.match(/[\u2801-\u28ff]/g)).toHaveLength(1);
    expect(lines.find((line) => line.includes('limit 12.7 µm'))).not.toMatch(/[\u2801-\u28ff]/);
  });

  test.each([80, 100])('keeps to %s columns and ten lines', (columns) => {
    const findings = [findingWith({ severity: 'fault', atSeconds: 100, untilSeconds: null })];
    const quarters = columnsWith({ machineLand: landWith(-3e-6), machinePitch: landWith(9e-5) });
    for (const executes of ['machine', 'plan', 'fixed'] as const) {
      const { hotSpots } = forecastedFile().forecast;
      const lines = drawn({ quarters, findings, hotSpots, executes }, { columns });
      expect(lines.length).toBeLessThanOrEqual(10);
      expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(columns);
    }
  });

  test('is ASCII where nothing else is taken, but for signs that are put so later', () => {
    const { hotSpots } = forecastedFile().forecast;
    const lines = drawn({ quarters: columnsWith(), hotSpots }, { ascii: true });
    expect(lines.join('').replaceAll(/[µ–]/g, '')).toMatch(/^[ -~]+$/);
  });

  test('is left out for silence and for a few turns', () => {
    const silent = [findingWith({ id: 'silent', severity: 'fault' })];
    expect(drawn({ quarters: columnsWith(), findings: silent })).toEqual([]);
    expect(drawn({})).toEqual([]);
  });
});

describe('what is drawn is of what is cut', () => {
  const quarters = columnsWith();
  const seriesOf = (executes: SideForecast['executes']) =>
    chartSeries(forecastedFile({}, { quarters, executes }));

  test.each([
    ['machine', 100e-6, 90e-6, 35e-6],
    ['plan', 90e-6, 100e-6, 30e-6],
    ['fixed', 80e-6, 90e-6, 25e-6],
  ] as const)('%s', (executes, pitch, other, land) => {
    const series = seriesOf(executes);
    expect(series.pitch[7]).toBeWithin(pitch, 1e-12);
    expect(series.otherPitch[7]).toBeWithin(other, 1e-12);
    expect(series.land[7]).toBeWithin(land, 1e-12);
    // A spiral of constant pitch: r = r₀ − p·turns.
    expect(series.radius[QUARTERS]).toBeWithin(0.2921 / 2 - (pitch * QUARTERS) / 4, 1e-9);
  });

  test('a marker band is drawn no wider than the widest pitch of the plan, and takes its radius', () => {
    const pitch = new Float64Array(QUARTERS).fill(90e-6);
    pitch[200] = 1.5e-3;
    const series = chartSeries(
      forecastedFile({}, { quarters: columnsWith({ pitch }), executes: 'plan' }),
    );
    expect(series.pitch[200]).toBe(forecastedFile().forecast.plan.pitchMax);
    const used = (90e-6 * (QUARTERS - 1) + 1.5e-3) / 4;
    expect(series.radius[QUARTERS]).toBeWithin(0.2921 / 2 - used, 1e-9);
  });
});
