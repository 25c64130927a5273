import { expect, test } from 'vitest';
import { planToJson, quartersToJson } from '../../src/report/plan-json.js';
import { forecastedFile } from '../support/forecast-fixture.js';

test('every field of a plan is written under its own name, in its own unit', () => {
  const plan = {
    radiusUsed: 0.08,
    startDiameter: 0.29,
    endDiameter: 0.13,
    spare: 0.004,
    fits: true,
    pitchMin: 80e-6,
    pitchMean: 127e-6,
    pitchMax: 300e-6,
    landMin: 11e-6,
    landMinAtSeconds: 1.1,
    widthMin: 22e-6,
    widthMinAtSeconds: 2.2,
    widthMax: 60e-6,
    cutDepthMax: 33e-6,
    facetMax: 0.44,
    facetMaxAtSeconds: 4.4,
    bendMin: 55e-6,
    bendMinAtSeconds: 5.5,
    bendShareSpherical: 0.006,
    bendShareLine: 0.007,
  };
  expect(planToJson(plan)).toEqual({
    radiusUsedMm: 80,
    startDiameterMm: 290,
    endDiameterMm: 130,
    spareMm: 4,
    fits: true,
    pitchMinUm: 80,
    pitchMeanUm: 127,
    pitchMaxUm: 300,
    meanLpi: 200, // an inch over 127 µm
    landMinUm: 11,
    landMinAtSeconds: 1.1,
    widthMinUm: 22,
    widthMinAtSeconds: 2.2,
    widthMaxUm: 60,
    cutDepthMaxUm: 33,
    facetMax: 0.44,
    facetMaxAtSeconds: 4.4,
    bendMinUm: 55,
    bendMinAtSeconds: 5.5,
    bendShareSpherical: 0.006,
    bendShareLine: 0.007,
  });
});

test('every column is written under the name of its quantity, in the unit of that name', () => {
  const { quarters } = forecastedFile().forecast;
  // What fixed pitch does is told by its plan alone, and vertical bass in metres by a house's rule.
  const isTold = (name: string) => !name.startsWith('fixed') && name !== 'lowVertical';
  const names = Object.keys(quarters).filter(isTold);
  // A column of its own for each: its index in millimetres, so that units show too.
  const columnOf = (name: string) => Float64Array.of(names.indexOf(name) / 1000);
  const marked = {
    ...quarters,
    ...Object.fromEntries(names.map((name) => [name, columnOf(name)])),
  };
  const factors: Readonly<Record<string, number>> = { Um: 1000, Mm: 1 };
  for (const [key, column] of Object.entries(quartersToJson(marked))) {
    const unit = /(Um|Mm)$/.exec(key)?.[0] ?? '';
    const index = names.indexOf(key.replace(/(Um|Mm)$/, ''));
    expect(column[0], key).toBeWithin(index * (factors[unit] ?? 0.001), 6e-5);
  }
  expect(Object.keys(quartersToJson(marked))).toHaveLength(names.length);
});
