import * as z from 'zod';
import { INTAKE_IDS, RULE_IDS } from '../intake/broken-rule.js';
import { FAILURE_CODES } from './failure.js';
import { findingSchema } from './finding-schema.js';
import { db, duration, mm, place } from './measures-schema.js';
import { FORMAT_ASPECTS } from './mixed-formats.js';
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

const failureSchema = z
  .strictObject({ path: z.string(), code: z.enum(FAILURE_CODES), message: z.string() })
  .describe('A file that could not be read, and why.');

const folderSchema = z
  .strictObject({
    path: z.string(),
    id: z.literal('mixed-formats'),
    severity,
    message: z.string(),
    mixed: z.array(
      z.strictObject({
        aspect: z.enum(FORMAT_ASPECTS),
        shares: z
          .array(z.strictObject({ value: z.string(), paths: z.array(z.string()) }))
          .describe('the commonest first'),
      }),
    ),
  })
  .describe('A folder whose files differ in format.');

/** What `furrow intake --json` writes: one document. */
export const intakeSchema = z
  .strictObject({
    format: z.literal(INTAKE_FORMAT),
    furrow: z.string().describe('Version of furrow.'),
    files: z.array(intakeFileSchema),
    failures: z.array(failureSchema),
    folders: z.array(folderSchema),
  })
  .describe('Files that arrived, judged. Units are in the keys.');

const summarySchema = z.strictObject({
  type: z.literal('summary'),
  furrow: z.string().describe('Version of furrow.'),
  files: z.int().describe('that were judged'),
  clear: z.int(),
  caution: z.int(),
  fault: z.int(),
  failures: z.int(),
});

const fileLine = intakeFileSchema.extend({ type: z.literal('file') });
const failureLine = failureSchema.extend({ type: z.literal('failure') });
const folderLine = folderSchema.extend({ type: z.literal('folder') });
const format = { format: z.literal(INTAKE_FORMAT) };

/** What a line of `furrow intake --ndjson` is: files and failures in input order, folders, one summary. */
export const intakeLineSchema = z
  .discriminatedUnion('type', [
    fileLine.extend(format),
    failureLine.extend(format),
    folderLine.extend(format),
    summarySchema.extend(format),
  ])
  .describe('One line: a file, a failure, a folder, or the summary, which is the last.');

export type IntakeJson = z.infer<typeof intakeSchema>;
export type IntakeFolderJson = z.infer<typeof folderSchema>;
export type IntakeFileJson = z.infer<typeof intakeFileSchema>;
/** A line but for its format. */
export type IntakeLine =
  | z.infer<typeof fileLine>
  | z.infer<typeof failureLine>
  | z.infer<typeof folderLine>
  | z.infer<typeof summarySchema>;
