import { Ajv2020 } from 'ajv/dist/2020.js';
import { Chalk } from 'chalk';
import { describe, expect, test } from 'vitest';
import { forecastSchema, lineSchema } from '../../src/report/forecast-schema.js';
import { type ReporterName, reporterOf } from '../../src/report/reporter.js';
import { schemaText } from '../../src/report/schema.js';
import { SCHEMA_NAMES, type SchemaName } from '../../src/report/schema-names.js';
import { findingWith, forecastedFile } from '../support/forecast-fixture.js';

const FAILURE = { path: 'x.wav', code: 'not-wav', message: 'found no RIFF' } as const;

async function reported(
  name: ReporterName,
  quarters = false,
  files = [forecastedFile()],
): Promise<string> {
  const options = {
    units: 'us',
    paint: new Chalk({ level: 0 }),
    ascii: false,
    isFolder: files.length > 1,
    details: false,
    brief: false,
    commonLevel: false,
    quarters,
    version: '0.0.0',
  } as const;
  const reporter = await reporterOf(name, options);
  const sides = files.map((file) => reporter.side(file)).join('');
  return sides + reporter.failure(FAILURE) + reporter.end();
}

/** A validator for a published schema by another hand than the one that made it. */
function validator(name: SchemaName) {
  const published: unknown = JSON.parse(schemaText(name));
  if (typeof published !== 'object' || published === null) throw new Error('no schema');
  return new Ajv2020({ strict: true, strictTypes: false, allowUnionTypes: true }).compile(
    published,
  );
}

test.each(SCHEMA_NAMES)(
  'the published schema of %s is a valid JSON Schema (ajv, draft 2020-12)',
  (name) => {
    expect(validator(name)).toBeTypeOf('function');
  },
);

describe.each([true, false])('the document, quarters %s', async (quarters) => {
  const document: unknown = JSON.parse(await reported('json', quarters));

  test('keeps to the published schema, by ajv and by zod', () => {
    const validate = validator('forecast');
    validate(document);
    expect(validate.errors).toBeNull();
    expect(forecastSchema.safeParse(document).error).toBeUndefined();
  });

  test('breaks the schema with a field more or less', () => {
    const validate = validator('forecast');
    const { sides, ...rest } = forecastSchema.parse(document);
    const [side] = sides;
    if (side === undefined) throw new Error('no side');
    expect(validate({ ...rest, sides: [{ ...side, more: 1 }] })).toBe(false);
    expect(validate({ ...rest, sides: [{ ...side, turns: '1' }] })).toBe(false);
    const { verdict: _, ...less } = side;
    expect(validate({ ...rest, sides: [less] })).toBe(false);
  });
});

describe('a side', async () => {
  const [side] = forecastSchema.parse(JSON.parse(await reported('json', true))).sides;

  test('is rounded at the edge, in the units of the names', () => {
    expect(side).toMatchObject({
      turns: 666.667,
      program: { loudnessLufs: -14.23, truePeakDbtp: 0, samplePeakDbfs: -0.92, averageDb: -16.99 },
      machine: { endDiameterMm: 120.661, spareMm: 0.006, meanLpi: 206.19, facetMax: 0.6124 },
      tightest: { radiusUsedMm: 80.1 },
      setup: { levelDb: 0, basePitchLpi: 300, widthMil: 2, meterReading: null, ellipticalHz: null },
      headroom: { fillDb: 0.71, limitedBy: { id: 'too-long', atSeconds: null } },
    });
    expect(side?.hotSpots).toMatchObject([
      { diameterMm: 265.8, landUm: 8.24, survives: { speedPercent: 0.12, delaySeconds: null } },
    ]);
    expect(side?.findings).toMatchObject([
      { value: 8.24, limit: 12.7, unit: 'um', frequencyHz: 45.3 },
    ]);
  });

  test('has columns whose missing values are null and whose −0 is 0', () => {
    expect(side?.quarters?.bendMinUm).toEqual([null, 20]);
    expect(side?.quarters?.landUm).toEqual([0, 5]);
    expect(side?.quarters?.facetMax).toEqual([0.1234, 0.5]);
  });

  test('tells its findings in metric units whatever the terminal shows', () => {
    expect(side?.findings[0]?.message).toContain('8.2 µm');
  });
});

test('a column is one line of the document, a field is another', async () => {
  const lines = (await reported('json', true)).split('\n');
  expect(lines).toContainEqual(expect.stringMatching(/^ +"radiusMm": \[146\.05, 146\],$/));
  expect(lines).toContainEqual(expect.stringMatching(/^ +"turns": 666\.667,$/));
});

test('a name that looks like a column comes through unchanged', async () => {
  const name = '[\n 1,\n 2\n] "\\ \u001b[31m';
  const { sides } = forecastSchema.parse(
    JSON.parse(await reported('json', true, [forecastedFile({ name })])),
  );
  expect(sides[0]?.name).toBe(name);
});

test('every line of the NDJSON keeps to its schema; the last counts the others', async () => {
  const clear = forecastedFile({}, { verdict: 'clear', findings: [] });
  const lines = (await reported('ndjson', true, [forecastedFile(), clear])).trimEnd().split('\n');
  const validate = validator('ndjson');
  for (const line of lines) {
    validate(JSON.parse(line));
    expect(validate.errors).toBeNull();
  }
  const parsed = lines.map((line) => lineSchema.parse(JSON.parse(line)));
  expect(parsed.map(({ type }) => type)).toEqual(['side', 'side', 'failure', 'summary']);
  expect(parsed.at(-1)).toMatchObject({ sides: 2, clear: 1, caution: 1, fault: 0, failures: 1 });
});

test('where a side ends is written in mm, other lengths in µm, dB as dBFS', async () => {
  const findings = [
    findingWith({ id: 'too-long', value: 0.1181, limit: 0.12065 }),
    findingWith({ id: 'over-peak', value: 0.31, limit: 0, unit: 'decibel-full-scale' }),
    findingWith({ id: 'silent', value: null, limit: null, unit: 'none', atSeconds: null }),
  ];
  const { sides } = forecastSchema.parse(
    JSON.parse(await reported('json', false, [forecastedFile({}, { findings })])),
  );
  expect(sides[0]?.findings).toMatchObject([
    { value: 118.1, limit: 120.65, unit: 'mm' },
    { value: 0.31, limit: 0, unit: 'dBFS' },
    { value: null, limit: null, unit: null, atSeconds: null },
  ]);
});
