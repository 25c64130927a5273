import { expect, test } from 'vitest';
import { findingToJson } from '../../src/report/finding-json.js';
import { findingSchema } from '../../src/report/finding-schema.js';
import { handText } from '../../src/report/hand-text.js';
import { hotSpotTable } from '../../src/report/hot-spot-table.js';
import { markersOf } from '../../src/report/markers.js';
import { setUp } from '../../src/report/set-up.js';
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

test('tracks with filters of their own are told: the first to dial in, the others by hand', () => {
  const filters = [
    { corner: 300, order: 2 },
    { corner: 300, order: 2 },
    { corner: null, order: 1 },
    { corner: 150, order: 1 },
  ] as const;
  const tracks = filters.map((elliptical, at) => ({
    name: `track ${at}`,
    fromSeconds: 60 * at,
    untilSeconds: 60 * at + 59,
    elliptical,
  }));
  const file = forecastedFile({ hand: { ...HAND, tracks } });
  expect(setUp(file).ellipticalHz).toBe(300);
  expect(handText(file, 'metric')).toBe(
    'By hand: elliptical out from 02:00.0; elliptical 150 Hz, 6 dB per octave, from 03:00.0.',
  );
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
