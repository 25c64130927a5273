import * as z from 'zod';
import { FAILURE_CODES } from '../../report/failure.js';
import { intakeFileSchema } from '../../report/intake-schema.js';

export const WATCHED_FORMAT = 'furrow.watched/1';

/** Negative before 1970: archives and transfers set any time. */
const DIGITS = /^-?\d+$/;
const SHA_256 = /^[0-9a-f]{64}$/;

/** What the report of a watched file says of the file and of how it was looked at. */
const headShape = {
  format: z.literal(WATCHED_FORMAT),
  furrow: z.string().describe('Version of furrow.'),
  file: z
    .strictObject({
      path: z.string().describe('in the folder that is watched, with /'),
      bytes: z.int().nonnegative(),
      modifiedNs: z.string().regex(DIGITS).describe('nanoseconds since 1970, in digits'),
      sha256: z.string().regex(SHA_256).nullable().describe('of all bytes; null: not read'),
    })
    .describe('The file as it was when it was examined.'),
  examinedWith: z
    .string()
    .regex(SHA_256)
    .describe('tells whether version, profile, rules and options are still those of the report'),
};

/** A report in a folder of reports, as far as the watch has to know it again. */
export const watchedHeadSchema = z.object({
  ...headShape,
  result: z.unknown(),
  failure: z.object({ code: z.string() }).nullable(),
});

/** What `furrow intake --watch` writes for each file: one document. */
export const watchedSchema = z
  .strictObject({
    ...headShape,
    result: intakeFileSchema.nullable(),
    failure: z
      .strictObject({ path: z.string(), code: z.enum(FAILURE_CODES), message: z.string() })
      .nullable(),
  })
  .describe('A file that arrived, judged; one of result and failure is null.');

export type WatchedDocument = z.infer<typeof watchedSchema>;
export type WatchedHead = z.infer<typeof watchedHeadSchema>;
