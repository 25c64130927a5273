import { expect, test } from 'vitest';
import { findingToJson } from '../../src/report/finding-json.js';
import { findingSchema } from '../../src/report/finding-schema.js';
import { hotSpotTable } from '../../src/report/hot-spot-table.js';
import { markersOf } from '../../src/report/markers.js';
import { trackPlace } from '../../src/report/track-place.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const TRACKS = [
  { name: 'Tin Bell', fromSeconds: 0.5, untilSeconds: 60 },
  { name: 'Slow Kite', fromSeconds: 62, untilSeconds: 200 },
];
const HAND = { basePitch: [], baseWidth: [], bands: [], tracks: TRACKS };

test.each([
  ['before the first track', 0.4, null],
  ['at its first sample', 0.5, { name: 'Tin Bell', number: 1, seconds: 0 }],
  ['in it', 30, { name: 'Tin Bell', number: 1, seconds: 29.5 }],
  ['at its end, which is in the gap', 60, null],
  ['in the second', 72, { name: 'Slow Kite', number: 2, seconds: 10 }],
  ['behind the last', 200, null],
])('a moment %s has that track’s time', (_, at, place) => {
  expect(trackPlace(at, TRACKS)).toEqual(place);
});

test('a side of one file has no tracks to tell of', () => {
  expect(trackPlace(1, undefined)).toBeNull();
  const json = findingToJson(findingWith({ atSeconds: 72 }), forecastedFile().settings);
  expect(Object.keys(json)).not.toContain('track');
  expect(json.message).not.toContain('track 2');
});

test('a finding says in JSON and in words which track it begins in, and when', () => {
  const { settings } = forecastedFile();
  const json = findingToJson(findingWith({ atSeconds: 72 }), settings, TRACKS);
  expect(findingSchema.parse(json)).toMatchObject({ track: 'Slow Kite', trackSeconds: 10 });
  expect(json.message).toContain('track 2 at 00:10.0');
  const whole = findingToJson(findingWith({ atSeconds: null }), settings, TRACKS);
  expect(whole).toMatchObject({ track: null, trackSeconds: null });
});

test('hot spots and markers are told with the track’s number and its own time', () => {
  const hotSpots = forecastedFile().forecast.hotSpots.map((spot) => ({ ...spot, atSeconds: 72 }));
  const findings = [findingWith({ atSeconds: 72 })];
  const file = forecastedFile({ hand: HAND }, { hotSpots, findings });
  const [heads, row] = hotSpotTable(file, 'metric', 80);
  expect(heads).toContain('track, at');
  expect(row).toContain('01:12.0  2, 00:10.0');
  for (const { text } of markersOf(file, 'metric')) expect(text).toContain('track 2 at 00:10.0');
  const [plain] = hotSpotTable(forecastedFile({}, { hotSpots }), 'metric', 80);
  expect(plain).not.toContain('track');
});
