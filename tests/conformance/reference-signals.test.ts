// Eleven signals and what the same formulas give for them, computed by an implementation that
// shares no code with this one: whole-file FFT, interpolated to 705.6 kHz or more, double
// precision. Signals, values and tolerances: tests/reference-signals/closed-forms/README.md.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { forecastFile } from '../../src/forecast-side.js';
import type { PlanReport, SideForecast } from '../../src/model/forecast-types.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';

const FOLDER = new URL('../reference-signals/closed-forms/', import.meta.url);

const numbers = z.record(z.string(), z.union([z.number(), z.boolean(), z.null()]));
const rows = z.record(z.string(), z.array(z.number().nullable()));
const caseSchema = z.object({
  turns: z.number(),
  plan: numbers,
  machine: numbers,
  fixed: numbers,
  quarters: rows,
  planned: z.looseObject({ landExactUm: z.array(z.number()) }),
});
const expected = z
  .object({
    settings: z.record(z.string(), z.record(z.string(), z.unknown())),
    signals: z.record(
      z.string(),
      z.object({ file: z.string(), default: caseSchema, variation: caseSchema }),
    ),
  })
  .parse(JSON.parse(readFileSync(new URL('expected.json', FOLDER), 'utf8')));

const VARIANTS = [
  { variant: 'default', levelDb: 0 },
  { variant: 'variation', levelDb: -6 },
] as const;

/** Half a step of the output's rounding, which the README's tolerances come on top of. */
const UM = 1e-6;

type Numbers = Record<string, number | boolean | null>;

function value(of: Numbers, name: string): number {
  const found = of[name];
  if (typeof found !== 'number') throw new Error(`${name} is ${found}`);
  return found;
}

function expectPlan(plan: PlanReport, wanted: Numbers): void {
  const um = (name: string): number => value(wanted, name) * UM;
  expect(plan.radiusUsed * 1e3).toBeWithin(value(wanted, 'radiusUsedMm'), 0.01);
  expect(plan.spare * 1e3).toBeWithin(value(wanted, 'spareMm'), 0.01);
  expect(plan.startDiameter * 1e3).toBeWithin(value(wanted, 'startDiameterMm'), 0.02);
  expect(plan.endDiameter * 1e3).toBeWithin(value(wanted, 'endDiameterMm'), 0.02);
  expect(plan.pitchMin).toBeWithin(um('pitchMinUm'), 0.05 * UM, 0.001);
  expect(plan.pitchMean).toBeWithin(um('pitchMeanUm'), 0.05 * UM, 0.001);
  expect(plan.pitchMax).toBeWithin(um('pitchMaxUm'), 0.05 * UM, 0.001);
  expect(plan.landMin).toBeWithin(um('landMinUm'), 0.05 * UM, 0.001);
  expect(plan.widthMin).toBeWithin(um('widthMinUm'), 0.1 * UM, 0.002);
  expect(plan.widthMax).toBeWithin(um('widthMaxUm'), 0.1 * UM, 0.002);
  expect(plan.cutDepthMax).toBeWithin(um('cutDepthMaxUm'), 0.05 * UM, 0.001);
  expect(plan.fits).toBe(wanted['fits']);
  if (value(wanted, 'facetMax') >= 0.001) {
    expect(20 * Math.log10(plan.facetMax / value(wanted, 'facetMax'))).toBeWithin(0, 0.1);
  }
  for (const name of ['bendShareSpherical', 'bendShareLine'] as const) {
    expect(plan[name]).toBeWithin(value(wanted, name), 0.002, 0.2);
  }
}

describe.each(Object.entries(expected.signals))('%s', (name, signal) => {
  describe.each(VARIANTS)('$variant profile at $levelDb dB', ({ variant, levelDb }) => {
    const wanted = signal[variant];
    let forecast: SideForecast;
    beforeAll(async () => {
      const profile = { ...resolveProfile({}), ...expected.settings[variant] };
      const path = fileURLToPath(new URL(signal.file, FOLDER));
      ({ forecast } = await forecastFile(path, profile, { levelDb, planner: 'turn-ahead' }));
    });

    it.each(['plan', 'machine', 'fixed'] as const)('has the reference figures of %s', (planner) => {
      expectPlan(forecast[planner], wanted[planner]);
    });

    it('bends no tighter than the reference', () => {
      const reference = wanted.plan['bendMinUm'];
      const bend = forecast.plan.bendMin;
      if (typeof reference !== 'number' || bend === null || reference > 1000) return;
      // A program that starts with a step has content up to the band end, and the reference's band
      // end is another: it lets no image through between half the source's rate and 24.1 kHz.
      const decibels = name === 'start-loud' ? 0.5 : 0.2;
      expect(20 * Math.log10(bend / UM / reference)).toBeWithin(0, decibels);
    });

    it.each([
      ['approach', 'approachUm', 1],
      ['approachLoose', 'approachLooseUm', 1],
      ['lateral', 'lateralUm', 1],
      ['lift', 'liftUm', 1],
      ['sink', 'sinkUm', 1],
      ['cutDepthMax', 'cutDepthMaxUm', 1],
      ['pitch', 'pitchUm', 1],
      ['machinePitch', 'machinePitchUm', 1],
      ['landNominal', 'landNominalUm', 1],
      ['machineLand', 'machineLandUm', 1],
      ['widthSet', 'widthSetUm', 2],
      ['widthMin', 'widthMinUm', 2],
      ['widthMax', 'widthMaxUm', 2],
    ] as const)('has the reference %s in every quarter', (column, key, factor) => {
      const reference = (wanted.quarters[key] ?? []).map((um) => (um ?? Number.NaN) * UM);
      expect(forecast.quarters[column]).toBeWithin(reference, 0.05 * UM * factor, 0.001 * factor);
    });

    it('has a land between the reference bound and its exact value in every quarter', () => {
      const bound = wanted.quarters['landUm'] ?? [];
      const exact = wanted.planned.landExactUm;
      for (const [quarter, land] of forecast.quarters.land.entries()) {
        const low = (bound[quarter] ?? Number.NaN) * UM;
        const high = (exact[quarter + 4] ?? Number.NaN) * UM;
        expect(Math.min(Math.max(land, low), high)).toBeWithin(land, 0.05 * UM, 0.001);
      }
    });

    it('has the reference radius in every quarter', () => {
      const reference = (wanted.quarters['radiusMm'] ?? []).map((mm) => (mm ?? Number.NaN) / 1e3);
      expect(forecast.quarters.radius).toBeWithin(reference, 1e-5);
    });
  });
});
