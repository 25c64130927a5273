import { expect, test } from 'vitest';
import { hotSpotMarks } from '../../../src/report/cue-copy/hot-spot-marks.js';
import { findingText } from '../../../src/report/finding-text.js';
import { hotSpotText } from '../../../src/report/hot-spot-text.js';
import { findingWith, forecastedFile } from '../../support/forecast-fixture.js';

test('hot spots and findings that have a place are marked there, in time order', () => {
  const file = forecastedFile(
    {},
    {
      findings: [
        findingWith({ id: 'overcut', severity: 'fault', atSeconds: 200, untilSeconds: 201.5 }),
        findingWith({ id: 'mono', severity: 'note', atSeconds: null, untilSeconds: null }),
        findingWith({ atSeconds: 10, untilSeconds: null, accepted: { reason: 'invented' } }),
      ],
    },
  );
  const marks = hotSpotMarks(file);
  // The invented side runs at 96 kHz.
  expect(marks.map(({ frame, length, label }) => [frame, length, label])).toEqual([
    [960_000, 0, 'land low (accepted)'],
    [18_474_240, 0, 'land 8.2 µm'],
    [19_200_000, 144_000, 'overcut'],
  ]);
  const [spot] = file.forecast.hotSpots;
  if (spot === undefined) throw new Error('no hot spot');
  expect(marks[1]?.note).toBe(hotSpotText(spot, file.settings, 'metric'));
  const overcut = findingWith({
    id: 'overcut',
    severity: 'fault',
    atSeconds: 200,
    untilSeconds: 201.5,
  });
  const { message, remedy } = findingText(overcut, { settings: file.settings, units: 'metric' });
  expect(marks[2]?.note).toBe(`fault: ${message} ${remedy}`);
});

test('what lies in the silent turns is marked at the first or the last frame', () => {
  const findings = [
    findingWith({ atSeconds: -1, untilSeconds: -0.5 }),
    findingWith({ atSeconds: -1, untilSeconds: 0.25 }),
    findingWith({ atSeconds: 1199.5, untilSeconds: 1201 }),
    findingWith({ atSeconds: 1201, untilSeconds: 1202 }),
  ];
  const marks = hotSpotMarks(forecastedFile({}, { findings, hotSpots: [] }));
  const last = 1200 * 96_000 - 1;
  expect(marks.map(({ frame, length }) => [frame, length])).toEqual([
    [0, 0],
    [0, 24_000],
    [last - 47_999, 47_999],
    [last, 0],
  ]);
});

test('a reader in the US gets mils', () => {
  expect(hotSpotMarks(forecastedFile(), 'us').map(({ label }) => label)).toContain('land 0.32 mil');
});

test('a side of several files has no one file to mark', () => {
  const [source] = forecastedFile().sources;
  if (source === undefined) throw new Error('no source');
  expect(hotSpotMarks(forecastedFile({ sources: [source, source] }))).toEqual([]);
});
