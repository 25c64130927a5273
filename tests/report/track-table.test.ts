import { describe, expect, test } from 'vitest';
import { sideToJson } from '../../src/report/side-json.js';
import { sideSchema } from '../../src/report/side-schema.js';
import { trackTable } from '../../src/report/track-table.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';
import { trackWith } from '../support/invented-track.js';

const silent = trackWith({
  averageDb: null,
  loudestDb: null,
  loudestAtSeconds: null,
  meanFrequency: null,
  worst: null,
});

describe('the table of tracks', () => {
  const file = forecastedFile({}, { tracks: [trackWith(), silent] });

  test('says where each begins and ends, how loud it is cut, its least land and what is worst', () => {
    const [heads, units, first] = trackTable(file, 'metric', 100);
    expect(heads?.trim().split(/ +/)).toEqual(
      'track,starts,lasts,from,to,level,loudest,land,at,treble,worst'.split(','),
    );
    expect(units?.trim().split(/ +/)).toEqual(['mm', 'mm', 'dB', 'dB', 'µm']);
    const cells = '03:02.5 03:00.3 270.2 248.4 -12.3 -4.1 13.0 04:59.7 3.5 kHz tight-bend';
    expect(first?.trim().split(/ +/).join(' ')).toBe(`1 invented track ${cells}`);
  });

  test('is in inches and mils for those who cut in them', () => {
    const [, units, first] = trackTable(file, 'us', 80);
    expect(units?.trim().split(/ +/)).toEqual(['in', 'in', 'dB', 'mil']);
    expect(first).toMatch(/10\.638 +9\.780 +-12\.3 +0\.51 /);
  });

  test('has a dash for what silence does not have', () => {
    expect(trackTable(file, 'metric', 100)[3]).toMatch(/ – +– +13\.0 +04:59\.7 +–$/);
  });

  test('leaves a note unsaid: there is nothing to mend', () => {
    const worst = findingWith({ id: 'echo-risk', severity: 'note' });
    const lines = trackTable(forecastedFile({}, { tracks: [trackWith({ worst })] }), 'metric', 80);
    expect(lines.join('\n')).not.toContain('echo-risk');
  });

  test.each([80, 100])('keeps to %s columns and to ASCII names of any length', (columns) => {
    const tracks = Array.from({ length: 12 }, (_, at) =>
      trackWith({
        name: `${'a very long invented name of a track '.repeat(3)}${at}\n\u001b[31m`,
        fromSeconds: 6000 + at,
        landMin: -100e-6,
        worst: findingWith({ id: 'low-vertical', severity: 'fault' }),
      }),
    );
    for (const units of ['metric', 'us'] as const) {
      const lines = trackTable(forecastedFile({}, { tracks }), units, columns, true);
      expect(lines).toHaveLength(14);
      expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(columns);
      expect(lines.join('')).not.toContain('\u001b');
      expect(new Set(lines).size).toBe(14);
    }
  });

  test('has no lines for a side of one file', () => {
    expect(trackTable(forecastedFile(), 'metric', 80)).toEqual([]);
  });
});

describe('the JSON of a side', () => {
  test('has its tracks in the units of the names, and the track of each hot spot', () => {
    const [spot] = forecastedFile().forecast.hotSpots;
    const hotSpots = [{ ...spot!, track: 'invented track' }];
    const side = sideToJson(forecastedFile({}, { tracks: [trackWith(), silent], hotSpots }), {
      quarters: false,
    });
    expect(sideSchema.safeParse(side).error).toBeUndefined();
    expect(side.hotSpots[0]?.track).toBe('invented track');
    expect(side.tracks?.[0]).toEqual({
      name: 'invented track',
      startsAtSeconds: 182.5,
      durationSeconds: 180.25,
      startDiameterMm: 270.2,
      endDiameterMm: 248.4,
      averageDb: -12.34,
      loudestDb: -4.06,
      loudestAtSeconds: 301.05,
      meanFrequencyHz: 3456.7,
      landMinUm: 13.04,
      landMinAtSeconds: 299.7,
      bendShareSpherical: 0.0032,
      bendShareLine: 0,
      worst: { id: 'tight-bend', severity: 'caution', atSeconds: 310 },
    });
    expect(side.tracks?.[1]).toMatchObject({ averageDb: null, meanFrequencyHz: null, worst: null });
  });

  test('has no tracks, and no track of a hot spot, where there is one file', () => {
    const side = sideToJson(forecastedFile(), { quarters: false });
    expect(side).not.toHaveProperty('tracks');
    expect(side.hotSpots[0]?.track).toBeNull();
  });
});
