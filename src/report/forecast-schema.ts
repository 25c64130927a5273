import * as z from 'zod';
import { commonLevelSchema } from './common-level-schema.js';
import { FAILURE_CODES } from './failure.js';
import { FORMAT } from './forecast-format.js';
import { sideSchema } from './side-schema.js';
import { splitSchema } from './split-schema.js';

const failureSchema = z.strictObject({
  path: z.string(),
  code: z.enum(FAILURE_CODES),
  message: z.string(),
});

/** What `--json` writes: one document. */
export const forecastSchema = z
  .strictObject({
    format: z.literal(FORMAT),
    furrow: z.string().describe('Version of furrow.'),
    sides: z.array(sideSchema),
    failures: z.array(failureSchema),
    commonLevel: commonLevelSchema.optional(),
    splits: z.array(splitSchema).optional(),
  })
  .describe('Forecasts of one or more sides. Units are in the keys.');

const summarySchema = z.strictObject({
  format: z.literal(FORMAT),
  type: z.literal('summary'),
  furrow: z.string().describe('Version of furrow.'),
  sides: z.int(),
  clear: z.int(),
  caution: z.int(),
  fault: z.int(),
  failures: z.int(),
  commonLevel: commonLevelSchema.optional(),
  splits: z.array(splitSchema).optional(),
});

/** What a line of `--ndjson` is: sides and failures in input order, then one summary. */
export const lineSchema = z
  .discriminatedUnion('type', [
    sideSchema.extend({ format: z.literal(FORMAT), type: z.literal('side') }),
    failureSchema.extend({ format: z.literal(FORMAT), type: z.literal('failure') }),
    summarySchema,
  ])
  .describe('One line: a side, a failure, or the summary, which is the last.');

export type ForecastJson = z.infer<typeof forecastSchema>;
export type Line = z.infer<typeof lineSchema>;
