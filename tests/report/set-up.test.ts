import { describe, expect, test } from 'vitest';
import { meterReading, setUp } from '../../src/report/set-up.js';
import { ceilToStep, floorToStep } from '../../src/steps.js';
import { forecastedFile } from '../support/forecast-fixture.js';

const headroom = (recommendedDb: number | null) => ({
  fillDb: null,
  traceDb: null,
  recommendedDb,
  limitedBy: null,
});

describe('the level to dial in', () => {
  test.each([
    // planned, recommended, dialled: never louder than planned, never louder than recommended
    [0, 3, 0],
    [0, -2.5, -2.5],
    [-3, -1, -3],
    [-3.2, null, -3.5],
    [1.4, 2, 1],
    [0, 0, 0],
  ])('planned %s dB, recommended %s dB: %s dB', (levelDb, recommended, expected) => {
    const file = forecastedFile({}, { levelDb, headroom: headroom(recommended) });
    expect(setUp(file).levelDb).toBe(expected);
  });

  test('rounding to a step of 0.1 dB does not lose a level that is on a step', () => {
    for (let tenths = -120; tenths <= 120; tenths++) {
      expect(floorToStep(tenths / 10, 0.1)).toBeWithin(tenths / 10, 1e-9);
    }
  });
});

describe('the pitch to dial in', () => {
  test.each([
    [84.7e-6, 5e-6, 85e-6],
    [85e-6, 5e-6, 85e-6],
    [85.1e-6, 5e-6, 90e-6],
    [84.7e-6, null, 84.7e-6],
  ])('%d m in steps of %d m: %d m, never tighter', (pitch, step, expected) => {
    expect(ceilToStep(pitch, step)).toBeWithin(expected, 1e-12);
    const settings = { ...forecastedFile().settings, basePitch: pitch, pitchStep: step };
    expect(setUp(forecastedFile({ settings })).basePitch).toBeWithin(expected, 1e-12);
  });

  test('stays where it is on a step, whatever rounding makes of it', () => {
    for (let steps = 1; steps <= 300; steps++) {
      expect(ceilToStep(steps * 1.7e-6, 1.7e-6)).toBeWithin(steps * 1.7e-6, 1e-15);
    }
  });
});

describe('the reading of the depth meter', () => {
  const table = [
    { reading: 10, width: 25.4e-6 },
    { reading: 30, width: 45.4e-6 },
    { reading: 35, width: 65.4e-6 },
  ];

  test.each([
    ['on the first row', 25.4e-6, 10],
    ['a quarter of the way', 30.4e-6, 15],
    ['on a row between', 45.4e-6, 30],
    ['in the second stretch', 55.4e-6, 32.5],
    ['on the last row', 65.4e-6, 35],
  ])('%s', (_, width, reading) => {
    expect(meterReading(table, width)).toBeWithin(reading, 1e-9);
  });

  test('is never extrapolated', () => {
    expect(meterReading(table, 25e-6)).toBeNull();
    expect(meterReading(table, 66e-6)).toBeNull();
  });

  test('is none without a table', () => expect(meterReading(null, 50e-6)).toBeNull());
});
