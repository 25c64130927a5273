import { stripVTControlCharacters } from 'node:util';
import { Chalk } from 'chalk';
import stringWidth from 'string-width';
import { describe, expect, test } from 'vitest';
import type { ForecastedFile } from '../../src/forecast-result.js';
import type { HotSpot, SideForecast } from '../../src/model/forecast-types.js';
import { scaleText } from '../../src/report/scale-text.js';
import type { Settings } from '../../src/settings.js';
import { forecastedFile, planWith } from '../support/forecast-fixture.js';

const MONOCHROME = { units: 'metric', paint: new Chalk({ level: 0 }) } as const;
const PITCH = 120e-6;
const TURN = 1.8;

const spotAt = (atSeconds: number, changes: Partial<HotSpot> = {}): HotSpot => ({
  atSeconds,
  turn: atSeconds / TURN,
  // Where constant pitch puts it.
  radius: 0.14605 - (PITCH * atSeconds) / TURN,
  land: 3.21e-6,
  landNominal: 9e-6,
  pitch: PITCH,
  cause: 'vertical',
  frequency: 55.2,
  wall: 'both',
  overcutDepth: 0,
  reachesContact: false,
  survives: null,
  ...changes,
});

/** A side of `seconds` cut at a constant 120 µm a turn by the machine. */
function sideOf(
  seconds: number,
  forecast: Partial<SideForecast> = {},
  settings: Partial<Settings> = {},
): ForecastedFile {
  const base = forecastedFile();
  const turns = seconds / TURN;
  const machinePitch = new Float64Array(Math.ceil(4 * turns)).fill(PITCH);
  return forecastedFile(
    { settings: { ...base.settings, ...settings } },
    {
      durationSeconds: seconds,
      turns,
      quarters: { ...base.forecast.quarters, machinePitch },
      hotSpots: [],
      ...forecast,
    },
  );
}

/** The lines after the head. */
function rowsOf(file: ForecastedFile, options = {}): string[] {
  const lines = scaleText(file, { ...MONOCHROME, ...options }).split('\n');
  return lines.slice(lines.indexOf('') + 1, -1);
}

describe('at constant pitch', () => {
  const rows = rowsOf(sideOf(1234.5, { hotSpots: [spotAt(751, {}), spotAt(61.26)] }));

  test('every minute has the diameter that start, pitch and turns give', () => {
    for (let minute = 0; minute <= 20; minute++) {
      const expected = 292.1 - (2 * 0.12 * minute * 60) / TURN;
      const row = rows.find((each) => each.startsWith(`  ${String(minute).padStart(2, '0')}:00 `));
      const [, read] = / (\d+\.\d) mm/.exec(row ?? '') ?? [];
      expect(Number(read)).toBeWithin(expected, 0.0501);
    }
  });

  test('start and end are named, with their diameters', () => {
    expect(rows[0]).toMatch(/^ {2}00:00 +292\.1 mm +the program starts; /);
    // 292.1 − 2 · 0.12 · 1234.5/1.8
    expect(rows.find((row) => row.startsWith('  20:34.5'))).toMatch(
      / 127\.5 mm +the program ends$/,
    );
  });

  test('hot spots are marked and come in time, with land and cause', () => {
    const spots = rows.filter((row) => row.startsWith('> '));
    expect(spots).toEqual([
      expect.stringMatching(/^> 01:01\.3 +283\.9 mm +LAND 3\.2 µm; vertical, 55 Hz; next: /),
      expect.stringMatching(/^> 12:31\.0 +192\.0 mm +LAND 3\.2 µm; vertical, 55 Hz; end: /),
    ]);
  });

  test('each row counts down to the next hot spot, after the last to the end', () => {
    const told = (clock: string) => rows.find((row) => row.slice(2).startsWith(clock));
    expect(told('00:00 ')).toContain('next: 01:01.3 in 1:01');
    expect(told('01:00 ')).toContain('next: 01:01.3 in 0:01');
    expect(told('01:01.3')).toContain('next: 12:31.0 in 11:29');
    expect(told('11:00 ')).toContain('next: 12:31.0 in 1:31');
    expect(told('12:31.0')).toContain('end: 20:34.5 in 8:03');
    expect(told('20:00 ')).toContain('end: 20:34.5 in 0:34');
    expect(told('20:34.5')).not.toMatch(/next|end:/);
  });

  test('lead-out and limits are named, those not reached from the outside in', () => {
    expect(rows.slice(-3)).toEqual([
      expect.stringMatching(/^ {2}20:36\.3 +lead-out, 6\.4 mm a turn$/),
      expect.stringMatching(/^ +120\.7 mm +inner limit, not reached$/),
      expect.stringMatching(/^ +106\.4 mm +finishing groove$/),
    ]);
  });
});

test('the inner limit stands where the spiral comes to it', () => {
  // (292.1 − 120.65)/2 mm at 0.12 mm a turn: 714.375 turns, 1285.875 s; preferred:
  // 673.333 turns, 1212 s; finishing groove: 773.75 turns, 1392.75 s, half way between two tenths.
  const rows = rowsOf(sideOf(1500, {}, { preferredEndDiameter: 0.1305 }));
  expect(rows).toContainEqual(expect.stringMatching(/^ {2}20:12\.0 +130\.5 mm +preferred end$/));
  expect(rows).toContainEqual(expect.stringMatching(/^ {2}21:25\.9 +120\.7 mm +INNER LIMIT, /));
  expect(rows).toContainEqual(
    expect.stringMatching(/^ {2}23:12\.[78] +106\.4 mm +FINISHING GROOVE/),
  );
  expect(rows.at(-1)).toContain('lead-out');
});

test('a spiral past the centre has no diameter there', () => {
  const rows = rowsOf(sideOf(2400));
  expect(rows.find((row) => row.includes('the program ends'))).toContain('past the centre');
});

test('a side that ends on a minute is told so in one line', () => {
  const rows = rowsOf(sideOf(600));
  expect(rows.filter((row) => row.startsWith('  10:00 '))).toEqual([
    expect.stringMatching(/the program ends$/),
  ]);
});

test('inches stand as decimals and as a rule shows them', () => {
  const rows = rowsOf(sideOf(600, { hotSpots: [spotAt(90)] }), { units: 'us' });
  expect(rows[0]).toMatch(/^ {2}00:00 +11\.500 in +11 1\/2 +the program starts/);
  // 292.1 − 2 · 0.12 · 50 = 280.1 mm = 11.0276 in = 11 + 1.76/64 in.
  expect(rows.find((row) => row.startsWith('>'))).toMatch(/ 11\.028 in +11 1\/32 +LAND 0\.13 mil;/);
  expect(rows.join('')).not.toMatch(/ (mm|µm)/);
});

test('at half speed both clocks are told, and waits are twice as long', () => {
  const file = sideOf(600, { hotSpots: [spotAt(90)] }, { speedFactor: 0.5 });
  const rows = rowsOf(file);
  expect(rows).toContainEqual(
    expect.stringMatching(
      /^ {2}01:00 \(lathe 02:00\) +284\.1 mm +next: 01:30\.0 in 1:00 \(lathe\)$/,
    ),
  );
  expect(rows).toContainEqual(expect.stringMatching(/^> 01:30\.0 \(lathe 03:00\) +280\.1 mm/));
  expect(scaleText(file, MONOCHROME)).toContain('half speed');
});

describe('the head', () => {
  const head = (forecast: Partial<SideForecast>) =>
    scaleText(sideOf(60, forecast), MONOCHROME).split('\n\n')[0]?.replaceAll(/\s+/g, ' ');
  const upTo = (recommendedDb: number | null) => ({
    headroom: { fillDb: recommendedDb, traceDb: 12, recommendedDb, limitedBy: null },
  });

  test('says whose spiral it is, at which level', () => {
    expect(head(upTo(0))).toContain("For the lathe's own automation at level 0.0 dB, 33.33 rpm");
    expect(head(upTo(0))).not.toContain('hold');
  });

  test('warns where that level does not hold, since another one gives another spiral', () => {
    expect(head(upTo(-2))).toContain('does not hold; make the scale at one that does: --level -2.');
    expect(head(upTo(null))).toContain('No level from -12 to +12 dB holds.');
    expect(head({ ...upTo(-2), executes: 'fixed', fixed: planWith() })).not.toContain('hold');
  });
});

describe('one page', () => {
  const full: Partial<HotSpot> = { land: -12.96e-5, cause: 'lateral-low', frequency: 257 };
  const hotSpots = [100, 200, 310, 400, 500].map((at) => spotAt(at, full));
  const limits = { preferredEndDiameter: 0.13 };

  test.each([
    ['metric', 1],
    ['us', 1],
    ['metric', 0.5],
    ['us', 0.5],
  ] as const)('holds thirty minutes in %s at speed %s, and 80 columns', (units, speedFactor) => {
    const file = sideOf(1800, { hotSpots }, { ...limits, speedFactor });
    const named = { ...file, name: `${'静かな夜'.repeat(30)}\u001b[2J\u202e.wav` };
    const text = scaleText(named, { ...MONOCHROME, units });
    const lines = text.trimEnd().split('\n');
    expect(lines.length).toBeLessThanOrEqual(60);
    expect(lines.filter((line) => /^ {2}\d\d:00 /.test(line))).toHaveLength(31);
    expect(Math.max(...lines.map((line) => stringWidth(line)))).toBeLessThanOrEqual(80);
    expect(lines.join('')).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
  });

  test('holds an hour, with fewer minutes told', () => {
    const lines = rowsOf(sideOf(3600, { hotSpots }));
    expect(lines.length).toBeLessThanOrEqual(54);
    expect(lines).toContainEqual(expect.stringMatching(/^ {2}02:00 /));
    expect(lines).not.toContainEqual(expect.stringMatching(/^ {2}01:00 /));
  });

  test('says the same without colour, and in ASCII', () => {
    const file = sideOf(1800, { hotSpots });
    const painted = scaleText(file, { ...MONOCHROME, paint: new Chalk({ level: 1 }) });
    expect(painted).toContain('\u001b[');
    expect(stripVTControlCharacters(painted)).toBe(scaleText(file, MONOCHROME));
    expect(scaleText(file, { ...MONOCHROME, ascii: true })).toMatch(/^[\n -~]*$/);
  });
});

describe('a side of several tracks', () => {
  const tracks = [
    { name: 'Slate', fromSeconds: 0, untilSeconds: 130 },
    { name: 'Chalk \u001b[31m', fromSeconds: 132.5, untilSeconds: 300 },
  ];
  const ofTracks = (count: number, seconds = 300): ForecastedFile => ({
    ...sideOf(seconds),
    hand: { basePitch: [], baseWidth: [], bands: [], tracks: tracks.slice(0, count) },
  });

  test('has a row where each track starts, at the diameter of the pitch so far', () => {
    const rows = rowsOf(ofTracks(2));
    expect(rows[0]).toContain('track 1: Slate');
    const row = rows.find((line) => line.includes('track 2')) ?? '';
    const diameter = 292.1 - (2e3 * PITCH * 132.5) / TURN;
    expect(row).toContain(`02:12.5  ${diameter.toFixed(1)} mm`);
    expect(row).toContain('track 2: Chalk \\u{1b}[31m');
  });

  test('of which there is but one is told as a file is', () => {
    expect(rowsOf(ofTracks(1))).toEqual(rowsOf(ofTracks(0)));
  });

  test('stays on a page of 60 lines, also of many tracks', () => {
    const many = Array.from({ length: 15 }, (_, at) => ({
      name: `Track ${at + 1}`,
      fromSeconds: 110 * at + 7,
      untilSeconds: 110 * at + 100,
    }));
    const file = {
      ...sideOf(1790),
      hand: { basePitch: [], baseWidth: [], bands: [], tracks: many },
    };
    const text = scaleText(file, MONOCHROME);
    expect(text.split('\n').length).toBeLessThanOrEqual(60);
  });
});
