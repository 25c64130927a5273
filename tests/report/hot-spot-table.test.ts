import { expect, test } from 'vitest';
import type { ForecastedFile } from '../../src/forecast-result.js';
import type { HotSpot } from '../../src/model/forecast-types.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { hotSpotTable } from '../../src/report/hot-spot-table.js';
import { forecastedFile } from '../support/forecast-fixture.js';

const spot = forecastedFile().forecast.hotSpots[0]!;
const overcut: Partial<HotSpot> = { land: -8e-6, overcutDepth: 4e-6, cause: 'vertical' };

function tableOf(
  changes: Partial<HotSpot>,
  columns = 100,
  file: Partial<ForecastedFile> = {},
): string[] {
  const hotSpots = [{ ...spot, ...changes }];
  return hotSpotTable(forecastedFile(file, { hotSpots }), 'metric', columns);
}

test('time, turn, diameter, land, cause, frequency, wall, and what it holds to, in one line', () => {
  const survives = { speed: 0.0014, depth: 4e-6, delay: 0.3 };
  const [heads, row, ...more] = tableOf({ survives });
  expect(heads?.trim()).toMatch(
    /^at +turn +diameter +land +taken by +wall +speed +depth +late +walls meet$|late$/,
  );
  expect(row).toMatch(
    /^ {2}1 {2}03:12\.4 +106 +265\.8 mm +8\.2 µm {2}bass 45 Hz {2}both +±0\.14 % +±4\.0 µm +0\.30 s$/,
  );
  expect(more).toEqual([]);
});

test('an error that nothing comes of is ample, one that was not looked at is a stroke', () => {
  const survives = { speed: null, depth: 4e-6, delay: null };
  expect(tableOf({ survives })[1]).toMatch(/ ample +±4\.0 µm +ample$/);
  expect(tableOf({ survives }, 100, { readFrom: 'motion' })[1]).toMatch(/ – +±4\.0 µm +ample$/);
  const [source] = forecastedFile().sources;
  const sources = [{ ...source!, sampleRate: 32_000 }];
  expect(tableOf({ survives }, 100, { sources })[1]).toMatch(/ – +±4\.0 µm +ample$/);
  expect(tableOf({ survives: null })[1]).toMatch(/ – +– +–$/);
});

test('an overcut says how deep the walls meet, and whether the stylus comes there', () => {
  expect(tableOf({ ...overcut, reachesContact: true })[1]).toMatch(/ 4\.0 µm, heard$/);
  expect(tableOf({ ...overcut, reachesContact: false })[1]).toMatch(/ 4\.0 µm, seen$/);
});

test.each([
  [80, 'right'],
  [100, 'right'],
  [100, 'both'],
] as const)('the longest figures keep to %s columns, wall %s', (columns, wall) => {
  const survives = { speed: 0.0001, depth: 123e-6, delay: 12.34 };
  const long = { ...overcut, land: -123.4e-6, overcutDepth: 61e-6, reachesContact: true };
  const cause = 'lateral-high';
  const lines = tableOf({ ...long, survives, cause, frequency: 1234, wall, turn: 1234.5 }, columns);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(columns);
  expect(lines.join('\n')).toMatch(/ 61\.0 µm, heard$|the walls meet 61\.0 µm deep/);
});

test('on a narrow screen an overcut says so on a line of its own, and only an overcut', () => {
  const [, row, below] = tableOf({ ...overcut, reachesContact: false }, 80);
  expect(row).not.toContain('seen');
  expect(below).toBe(
    '     the walls meet 4.0 µm deep, above where the stylus runs: seen, not heard',
  );
  expect(tableOf({}, 80)).toHaveLength(2);
});

test.each([80, 100])('at half speed both clocks are told, in %s columns', (columns) => {
  const settings = { ...resolveProfile(), speedFactor: 0.5 };
  const lines = tableOf({ ...overcut, frequency: 12_345, wall: 'right' }, columns, { settings });
  expect(lines[1]).toContain('03:12.4 (06:24.9)');
  expect(lines.join('\n')).toContain('the walls meet 4.0 µm deep');
  // A delay is the lathe's, twice as long by its own clock.
  const survives = { speed: 0.001, depth: 4e-6, delay: 0.35 };
  expect(tableOf({ survives }, columns, { settings })[1]).toMatch(/ 0\.70 s/);
  expect(tableOf({ survives }, columns)[1]).toMatch(/ 0\.35 s/);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(columns);
});

test('without a place there is no table', () => {
  expect(hotSpotTable(forecastedFile({}, { hotSpots: [] }), 'metric', 80)).toEqual([]);
});
