import { z } from 'zod';
import { INTAKE_IDS, RULE_IDS } from '../intake/broken-rule.js';
import { FAILURE_CODES } from './failure.js';
import { findingSchema } from './finding-schema.js';
import { db, duration, mm, place } from './measures-schema.js';
import { sourceSchema } from './side-schema.js';

export const INTAKE_FORMAT = 'furrow.intake/1';

const severity = z.enum(['note', 'caution', 'fault']);

const worstSchema = z
  .strictObject({ id: z.enum(INTAKE_IDS), severity, atSeconds: place, message: z.string() })
  .describe('the finding to look at first');

const ruleFindingSchema = z
  .strictObject({
    id: z.enum(RULE_IDS),
    severity,
    atSeconds: place,
    message: z.string().describe('what was found, and what the house allows'),
    remedy: z.string(),
  })
  .describe('A rule of the house that the file breaks.');

/** What is told of one file that was read. */
export const intakeFileSchema = z
  .strictObject({
    path: z.string(),
    verdict: z.enum(['clear', 'caution', 'fault']),
    worst: worstSchema.nullable(),
    durationSeconds: duration,
    spareMm: mm.describe('mm: radius that is left at the planned level, of what is executed'),
    levelDb: db.describe('the planned level'),
    recommendedDb: db.describe(
      'the largest level that fits and traces; null: -12 to +12 dB holds none',
    ),
    executes: z.enum(['machine', 'plan', 'fixed']).describe('whose plan it is about'),
    source: sourceSchema.nullable(),
    findings: z.array(z.union([findingSchema, ruleFindingSchema])),
    ignored: z.int().describe('findings that the rules leave out'),
    notJudged: z
      .array(z.enum(RULE_IDS))
      .describe('rules that only the sound could tell, where a saved motion was read'),
  })
  .describe('A file that arrived, judged.');

export const intakeFailureSchema = z
  .strictObject({ path: z.string(), code: z.enum(FAILURE_CODES), message: z.string() })
  .describe('A file that could not be read, and why.');

export type IntakeFileJson = z.infer<typeof intakeFileSchema>;
