import { Buffer } from 'node:buffer';
import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FINDING_IDS } from '../../src/model/forecast-types.js';
import { clockText } from '../../src/report/markers.js';
import { markersCsv } from '../../src/report/markers-csv.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

type Line = Readonly<Record<string, string>>;

function linesOf(csv: string): Line[] {
  return parse(csv, { columns: true, record_delimiter: '\r\n' });
}

describe('the markers of a side', () => {
  const findings = [
    findingWith({ id: 'too-long', severity: 'fault', atSeconds: 1190.5, untilSeconds: null }),
    findingWith({ id: 'mono', severity: 'note', atSeconds: null, untilSeconds: null }),
    findingWith({ atSeconds: -0.9, untilSeconds: 0.45 }),
    findingWith({ id: 'overcut', severity: 'fault', atSeconds: 1199, untilSeconds: 1201.8 }),
    findingWith({
      id: 'lift',
      atSeconds: 100,
      untilSeconds: 102.4567,
      accepted: { reason: '=known' },
    }),
  ];
  const csv = markersCsv(forecastedFile({}, { findings }));
  const lines = linesOf(csv);
  const lineOf = (id: string) => lines.find((line) => line['id'] === id);

  test('tell each place three ways: clock, seconds and sample of the file', () => {
    expect(lineOf('lift')).toMatchObject({
      start: '00:01:40.000',
      end: '00:01:42.457',
      startSeconds: '100',
      endSeconds: '102.457',
      startSample: '9600000',
      // 102.4567 s at 96 kHz: from the time itself, not from what was rounded.
      endSample: '9835843',
    });
  });

  test('stand in time order, none left out and none merged, hot spots among them', () => {
    const ids = ['mono', 'land-low', 'lift', 'lateral-low', 'too-long', 'overcut'];
    expect(lines.map(({ id }) => id)).toEqual(ids);
    expect(lineOf('lateral-low')).toMatchObject({
      kind: 'hot-spot',
      severity: '',
      label: 'land 8.2 um',
    });
  });

  test('lie within the file where the finding begins before it or ends behind it', () => {
    expect(lineOf('land-low')).toMatchObject({ start: '00:00:00.000', end: '00:00:00.450' });
    expect(lineOf('overcut')).toMatchObject({ end: '00:20:00.000', endSample: '115200000' });
  });

  test('are points where a finding has no end, and stand at the start for the whole file', () => {
    expect(lineOf('too-long')).toMatchObject({ start: '00:19:50.500', end: '00:19:50.500' });
    expect(lineOf('mono')).toMatchObject({ startSample: '0', endSample: '0' });
    expect(lineOf('mono')?.['label']).toBe('mono (note, file)');
  });

  test('say what the house accepts, which cannot act as a formula', () => {
    expect(lineOf('lift')).toMatchObject({ label: 'lift (accepted)', accepted: "'=known" });
  });

  test('have labels of at most 32 characters and are ASCII, whatever is found', () => {
    const all = FINDING_IDS.flatMap((id) => [
      findingWith({ id }),
      findingWith({ id, severity: 'caution', atSeconds: null, untilSeconds: null, value: null }),
    ]);
    for (const units of ['metric', 'us'] as const) {
      const text = markersCsv(forecastedFile({}, { findings: all }), units);
      expect(Buffer.byteLength(text)).toBe(text.length);
      for (const { label } of linesOf(text)) expect(label?.length).toBeLessThanOrEqual(32);
    }
  });

  test('keep file time at half speed, where the lathe has another', () => {
    const file = forecastedFile({}, { findings: [findingWith()] });
    const settings = { ...file.settings, speedFactor: 0.5 } as const;
    const [line] = linesOf(markersCsv({ ...file, settings }));
    expect(line).toMatchObject({ start: '00:03:12.440', startSample: '18474240' });
    expect(line?.['text']).toContain('lathe 06:24.9');
  });

  test('count no samples on a side made of files of different rates', () => {
    const file = forecastedFile();
    const sources = [96_000, 44_100].flatMap((sampleRate) =>
      file.sources.map((source) => ({ ...source, sampleRate })),
    );
    const [line] = linesOf(markersCsv({ ...file, sources }));
    expect(line).toMatchObject({ startSeconds: '192.44', startSample: '' });
  });

  test('are a line of names for a side without any', () => {
    expect(linesOf(markersCsv(forecastedFile({}, { findings: [], hotSpots: [] })))).toEqual([]);
  });
});

describe('a time on the clock of a timeline', () => {
  test.each([
    [0, '00:00:00.000'],
    [59.9996, '00:01:00.000'],
    [3599.9994, '00:59:59.999'],
    [36_000.25, '10:00:00.250'],
  ])('%d s is %s', (seconds, text) => {
    expect(clockText(seconds)).toBe(text);
  });

  test('adds up to the seconds it came from', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e5, noNaN: true }), (seconds) => {
        const [hours, minutes, rest] = clockText(seconds).split(':').map(Number);
        expect((hours ?? 0) * 3600 + (minutes ?? 0) * 60 + (rest ?? 0)).toBeWithin(
          seconds,
          5.0001e-4,
        );
        expect(minutes).toBeLessThan(60);
        expect(rest).toBeLessThan(60);
      }),
    );
  });
});
