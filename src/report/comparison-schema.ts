import * as z from 'zod';
import { findingSchema } from './finding-schema.js';
import { db, duration, mm, place, um } from './measures-schema.js';

const changeOf = <Value extends z.ZodType>(value: Value) =>
  z.strictObject({ before: value, after: value });

const verdict = z.enum(['clear', 'caution', 'fault']);

const landSchema = z.strictObject({
  change: z.enum(['lost', 'gained']),
  atSeconds: place.describe('where, seconds of the new file'),
  untilSeconds: place,
  beforeUm: um.describe('µm, to 0.01: least land; over the widest limit it counts as that limit'),
  afterUm: um,
});

const findingChangeSchema = z.strictObject({
  change: z.enum(['new', 'gone', 'worse', 'better']),
  before: findingSchema.nullable().describe("in its own file's time; null for a new one"),
  after: findingSchema.nullable().describe('null for one that is gone'),
});

/** How a side differs from the one it was compared with. */
export const comparisonSchema = z
  .strictObject({
    name: z.string().describe('of the file that was there before'),
    offsetSeconds: duration.describe(
      'how much later the same music comes in the new file, seconds, to 0.001; ' +
        'null: the programs are not alike at any shift',
    ),
    verdict: changeOf(verdict),
    durationSeconds: changeOf(duration).nullable(),
    loudnessLufs: changeOf(db).nullable(),
    endDiameterMm: changeOf(mm).nullable(),
    spareMm: changeOf(mm).nullable(),
    recommendedDb: changeOf(db).nullable(),
    fillDb: changeOf(db).nullable(),
    traceDb: changeOf(db).nullable(),
    land: z.array(landSchema),
    findings: z.array(findingChangeSchema),
  })
  .describe('Only what matters; null: no change that does. Of the plan that the lathe executes.');

export type ComparisonJson = z.infer<typeof comparisonSchema>;
