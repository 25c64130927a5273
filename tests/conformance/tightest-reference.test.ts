// The tightest plan of the eleven reference signals, from the independent implementation whose
// values and tolerances tests/reference-signals/closed-forms/README.md describes.
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { forecastFile } from '../../src/forecast-side.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';

const FOLDER = new URL('../reference-signals/closed-forms/', import.meta.url);
const caseSchema = z.object({ tightest: z.object({ radiusUsedMm: z.number() }) });
const expected = z
  .object({
    settings: z.record(z.string(), z.record(z.string(), z.unknown())),
    signals: z.record(
      z.string(),
      z.object({ file: z.string(), default: caseSchema, variation: caseSchema }),
    ),
  })
  .parse(JSON.parse(readFileSync(new URL('expected.json', FOLDER), 'utf8')));

describe.each([
  ['default', 0],
  ['variation', -6],
] as const)('the %s profile at %d dB', (variant, levelDb) => {
  it.each(Object.entries(expected.signals))('%s takes the reference radius', async (_, signal) => {
    const settings = { ...resolveProfile({}), ...expected.settings[variant] };
    const path = fileURLToPath(new URL(signal.file, FOLDER));
    const request = { levelDb, planner: 'turn-ahead' } as const;
    const { forecast } = await forecastFile(path, settings, request);
    const { radiusUsed } = forecast.tightest;
    const { radiusUsedMm } = signal[variant].tightest;
    expect(radiusUsed * 1e3).toBeWithin(radiusUsedMm, 0.01, 0.002);
    expect(radiusUsed).toBeLessThanOrEqual(forecast.plan.radiusUsed + 1e-12);
  });
});
