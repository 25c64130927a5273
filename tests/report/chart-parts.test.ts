import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chartBand } from '../../src/report/chart-band.js';
import { inkOf } from '../../src/report/chart-ink.js';
import { chartMarks } from '../../src/report/chart-marks.js';
import { chartPoints } from '../../src/report/chart-points.js';
import { chartTicks } from '../../src/report/chart-ticks.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

describe('the points of a column', () => {
  const columns = fc.array(fc.double({ noNaN: true, min: -1, max: 1 }), {
    minLength: 1,
    maxLength: 300,
  });

  test('keep the least of all, whatever the number of points: nothing is averaged away', () => {
    fc.assert(
      fc.property(columns, fc.integer({ min: 1, max: 200 }), (values, count) => {
        const points = chartPoints(Float64Array.from(values), count, Math.min);
        expect(points).toHaveLength(count);
        expect(Math.min(...points)).toBe(Math.min(...values));
        expect(points.every((point) => values.includes(point))).toBe(true);
      }),
    );
  });

  test('each hold the least of their own stretch', () => {
    const column = Float64Array.of(5, 3, 9, 7, 1, 8);
    expect(chartPoints(column, 3, Math.min)).toEqual([3, 7, 1]);
    expect(chartPoints(column, 3, Math.max)).toEqual([5, 9, 8]);
    expect(chartPoints(Float64Array.of(1, 2), 4, Math.max)).toEqual([1, 1, 2, 2]);
  });

  test('pass over what is not finite', () => {
    expect(chartPoints(Float64Array.of(Number.NaN, 2, Number.NaN, 4), 2, Math.min)).toEqual([2, 4]);
    expect(chartPoints(Float64Array.of(Number.NaN, 2), 2, Math.min)).toEqual([Number.NaN, 2]);
  });
});

describe('the dots of a cell', () => {
  test('are the Braille patterns of the Unicode Standard', () => {
    // The eight dots from the top, left before right, with the code points of their patterns:
    // dots 1, 4, 2, 5, 3, 6, 7, 8 (The Unicode Standard, Braille Patterns, U+2800 to U+28FF).
    const codes = [0x2801, 0x2808, 0x2802, 0x2810, 0x2804, 0x2820, 0x2840, 0x2880];
    for (const [dot, code] of codes.entries()) {
      expect(
        inkOf(false)
          .glyph(1 << dot)
          .codePointAt(0),
      ).toBe(code);
    }
    expect(inkOf(false).glyph(0xff)).toBe('\u28ff');
    expect(inkOf(false).glyph(0)).toBe(' ');
  });

  test('are in ASCII where nothing else is taken', () => {
    const drawn = [0, 1, 2, 3].map((dots) => inkOf(true).glyph(dots)).join('');
    expect(drawn).toBe(" '.:");
  });
});

describe('a band', () => {
  const rows = [
    { label: '', top: 20, bottom: 10, rule: '' },
    { label: '', top: 10, bottom: 0, rule: '_' },
    { label: '', top: 0, bottom: -10, rule: '' },
  ] as const;

  test('shows less than zero under the line of zero, however little, and zero above it', () => {
    const band = chartBand(rows, [-0.001, 0, 9.9, 18], inkOf(true));
    expect(band).toEqual(["   '", "_.'_", "'   "]);
  });

  test('keeps what is beyond it on its edges', () => {
    const band = chartBand(rows, [99, -99], inkOf(true));
    expect(band).toEqual(["' ", '__', ' .']);
  });

  test('draws the other values only where it has room', () => {
    const band = chartBand(rows, [15, 15], inkOf(true), [16, 5]);
    expect(band).toEqual(['..', '_~', '  ']);
  });
});

describe('the marks', () => {
  const { forecast } = forecastedFile();
  const spot = forecast.hotSpots[0]!;
  const marksOf = (changes: Partial<typeof forecast>) =>
    chartMarks({ ...forecast, ...changes }, 10, 100, inkOf(true));

  test('a fault stands as long as it lasts, a caution and one that is accepted nowhere', () => {
    const fault = findingWith({ severity: 'fault', atSeconds: 30, untilSeconds: 55 });
    const findings = [fault, findingWith({ atSeconds: 5, untilSeconds: 95 })];
    expect(marksOf({ hotSpots: [], findings })).toBe('   xxx');
    const accepted = { ...fault, accepted: { reason: 'known' } };
    expect(marksOf({ hotSpots: [], findings: [accepted] })).toBe('');
  });

  test('where two hot spots meet the worse one shows', () => {
    const hotSpots = [
      { ...spot, atSeconds: 42 },
      { ...spot, atSeconds: 44 },
    ];
    expect(marksOf({ hotSpots, findings: [] })).toBe('    1');
  });

  test('what lies before the program or behind it is at its ends', () => {
    const hotSpots = [
      { ...spot, atSeconds: -1.8 },
      { ...spot, atSeconds: 101 },
    ];
    expect(marksOf({ hotSpots, findings: [] })).toBe('1        2');
  });
});

describe('the ticks', () => {
  test('stand where their time is, with the diameter there', () => {
    // A straight spiral from 300 to 100 mm in 1200 s.
    const line = chartTicks(82, 1200, (share) => 0.3 - 0.2 * share, 'metric');
    const ticks = [...line.matchAll(/\|(\d+):00 (\S+) mm/g)];
    expect(ticks.length).toBeGreaterThan(2);
    for (const { index, 1: minute, 2: diameter } of ticks) {
      expect(index).toBe(Math.floor((Number(minute) / 20) * 82));
      expect(Number(diameter)).toBeWithin(300 - 10 * Number(minute), 0.05);
    }
  });

  test('never run over the end nor into each other', () => {
    for (let lasts = 1; lasts < 4000; lasts += 13) {
      const line = chartTicks(62, lasts, () => 0.2, 'us');
      expect(line.length).toBeLessThanOrEqual(62);
      expect(line).not.toMatch(/in\d/);
    }
  });

  test('past the centre have no diameter', () => {
    expect(chartTicks(40, 100, () => -0.01, 'metric')).toContain('|0:00 –');
  });
});
