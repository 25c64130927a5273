import { describe, expect, test } from 'vitest';
import { sheetRows } from '../../../src/report/cut-sheet/sheet-rows.js';
import { settingsWith } from '../../analysis/summary-of.js';
import { forecastedFile } from '../../support/forecast-fixture.js';
import { trackWith } from '../../support/invented-track.js';

const FIRST = { name: 'Ebb', fromSeconds: 0, untilSeconds: 600 };
const SECOND = { name: 'Flood', fromSeconds: 602, untilSeconds: 1200 };

describe('what happens while a side is cut', () => {
  test('is told in time: tracks, markers, steps by hand, end, lead-out after the silent turn', () => {
    const settings = settingsWith({ pitchStep: null, ellipticalSteps: [80, 150] });
    const hand = {
      basePitch: [
        { fromSeconds: 0, pitch: 100e-6 },
        { fromSeconds: 601.5, pitch: 127e-6 },
      ],
      baseWidth: [{ fromSeconds: 700, width: 60e-6 }],
      bands: [{ fromSeconds: 600.5, untilSeconds: 601.5, pitch: 1.2e-3 }],
      tracks: [
        { ...FIRST, elliptical: { corner: null, order: 1 as const } },
        {
          ...SECOND,
          elliptical: { corner: 120, order: 2 as const },
          trim: { gainDb: 1.25, fadeInSeconds: 0, fadeOutSeconds: 3 },
        },
      ],
    };
    const tracks = [
      trackWith({ ...FIRST, startDiameter: 0.292 }),
      trackWith({ ...SECOND, startDiameter: 0.211 }),
    ];
    const rows = sheetRows(forecastedFile({ settings, hand }, { tracks }), 'metric');
    expect(rows.map(({ atSeconds, what }) => [atSeconds, what])).toEqual([
      [0, 'Ebb'],
      [600.5, 'marker, 1.2 mm a turn for 1 s'],
      [601.5, 'base pitch 200 LPI (127 µm)'],
      [602, 'Flood'],
      // The next position up takes more of the vertical motion.
      [602, 'elliptical 150 Hz, 12 dB per octave'],
      [602, 'trim +1.25 dB'],
      [700, 'groove 2.36 mil (60.0 µm)'],
      [1197, 'fade out over 3 s'],
      [1200, 'program ends'],
      [1201.8, 'lead-out from here on'],
    ]);
    expect(
      rows.flatMap(({ kind, number, diameter }) => (kind === 'track' ? [[number, diameter]] : [])),
    ).toEqual([
      [1, 0.292],
      [2, 0.211],
    ]);
    expect(rows.at(-1)?.diameter).toBeNull();
  });

  test('of a side of one file is its name, end and lead-out', () => {
    const rows = sheetRows(forecastedFile(), 'metric');
    expect(rows.map(({ kind }) => kind)).toEqual(['track', 'end', 'end']);
  });
});
