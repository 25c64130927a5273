import { describe, expect, test } from 'vitest';
import {
  amplitudeDb,
  powerDb,
  roundDb,
  roundHz,
  roundRatio,
  roundSeconds,
  toLpi,
  toMil,
  toMm,
  toPercent,
  toUm,
} from '../../src/report/numbers.js';

describe('each unit has its step', () => {
  test.each([
    ['toUm', toUm, 84.666666e-6, 84.67],
    ['toUm', toUm, -6.304e-6, -6.3],
    ['toMm', toMm, 0.1206546, 120.655],
    ['toMil', toMil, 50.8e-6, 2],
    // 12", 85.975 mm in 25 min at 33⅓: 103.17 µm, 246.2 LPI, computed by hand
    ['toLpi', toLpi, 103.17e-6, 246.2],
    ['toPercent', toPercent, 0.00123456, 0.12],
    ['roundDb', roundDb, -14.2349, -14.23],
    ['roundSeconds', roundSeconds, 192.44449, 192.444],
    ['roundRatio', roundRatio, 0.61239, 0.6124],
    ['roundHz', roundHz, 45.26, 45.3],
  ])('%s %#', (_, write, value, expected) => {
    expect(write(value)).toBe(expected);
  });
});

const WRITERS = { toUm, toMm, toMil, toPercent, roundDb, roundSeconds, roundRatio, roundHz };

test.each(Object.entries(WRITERS))(
  '%s writes null for null and for what is not finite',
  (_, write) => {
    expect([null, Number.NaN, Infinity, -Infinity].map(write)).toEqual([null, null, null, null]);
    // Finite by itself, and no longer in its unit.
    expect(write(Number.MAX_VALUE) ?? 0).toBeLessThan(Infinity);
  },
);

test('no pitch has no lines per inch', () => {
  expect([null, 0, Number.NaN].map(toLpi)).toEqual([null, null, null]);
});

test('what rounds to −0 is written 0', () => {
  expect(toUm(-1e-12)).toBe(0);
  expect(roundDb(-0)).toBe(0);
});

test('silence has no level', () => {
  expect(powerDb(0)).toBeNull();
  expect(amplitudeDb(0)).toBeNull();
});

test('a full-scale sine peaks at 0 dB and averages -3.01 dB', () => {
  expect(amplitudeDb(1)).toBe(0);
  expect(powerDb(0.5)).toBe(-3.01);
});
