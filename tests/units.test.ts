import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  formatDiameter,
  formatLength,
  formatSpeed,
  linesPerInch,
  parseLength,
  parsePercent,
  parsePitch,
  parseSpeed,
} from '../src/units.js';

// Source: international yard and pound agreement of 1959, an inch is 25.4 mm exactly.
describe('lengths are read with their unit, whatever the case and the spacing', () => {
  test.each([
    ['85um', 85e-6],
    ['85 µm', 85e-6],
    ['85\u03bcm', 85e-6],
    ['50.8um', 50.8e-6],
    ['2mil', 50.8e-6],
    ['0.5 MIL', 12.7e-6],
    ['292.1mm', 0.2921],
    ['11.5in', 0.2921],
    ['1.2cm', 0.012],
    ['.5mil', 12.7e-6],
    ['1e2um', 1e-4],
  ])('%s', (text, metres) => {
    expect(parseLength(text)).toBeWithin(metres, 0, 1e-12);
  });

  test.each([
    '85',
    '',
    'um',
    '-5um',
    '5 um of land',
    '300lpi',
    '5um5',
    'constructor',
    '5__proto__',
    '1e999um',
    'NaNum',
  ])('%j is no length', (text) => {
    expect(parseLength(text)).toBeNull();
  });
});

describe('a pitch is a length a turn, or an inch over its lines', () => {
  test.each([
    // text, µm; 300 and 200 LPI by the definition of the inch
    ['300lpi', 84.66666666667],
    ['200 LPI', 127],
    ['85um', 85],
    ['3.3333mil', 84.66582],
  ])('%s', (text, micrometres) => {
    expect(parsePitch(text)).toBeWithin(micrometres * 1e-6, 0, 1e-9);
  });

  test('no lines an inch are no pitch', () => expect(parsePitch('0lpi')).toBeNull());

  test('a bare number is no pitch', () => expect(parsePitch('300')).toBeNull());

  test('lines per inch undo the reading', () => {
    expect(linesPerInch(parsePitch('246.2lpi') ?? 0)).toBeWithin(246.2, 0, 1e-12);
  });
});

test.each([
  ['7cm/s', 0.07],
  ['70 mm/s', 0.07],
  ['0.07m/s', 0.07],
])('%s is a speed', (text, speed) => {
  expect(parseSpeed(text)).toBeWithin(speed, 0, 1e-12);
});

test('a speed without a unit of time is none', () => expect(parseSpeed('7cm')).toBeNull());

test('a percentage is a hundredth, and a bare number is no percentage', () => {
  expect(parsePercent('0.1%')).toBeWithin(0.001, 0, 1e-12);
  expect(parsePercent('0.1')).toBeNull();
});

test('what is written is read again to 1e-12 of it', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-9, max: 1, noNaN: true }), (value) => {
      expect(parseLength(formatLength(value))).toBeWithin(value, 0, 1e-12);
      expect(parseLength(formatDiameter(value))).toBeWithin(value, 0, 1e-12);
      expect(parseSpeed(formatSpeed(value))).toBeWithin(value, 0, 1e-12);
    }),
  );
});

test('decimal lengths are written as they were typed', () => {
  expect(formatLength(parseLength('85um') ?? 0)).toBe('85um');
  expect(formatDiameter(parseLength('292.1mm') ?? 0)).toBe('292.1mm');
  expect(formatSpeed(parseSpeed('7cm/s') ?? 0)).toBe('7cm/s');
});
