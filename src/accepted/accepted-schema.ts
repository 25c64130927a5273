import * as z from 'zod';
import { FINDING_IDS } from '../model/forecast-types.js';

export const ACCEPTED_FORMAT = 'furrow.accepted/1';

const seconds = z.number('expected seconds of the program, or null for the whole side').nullable();

export const acceptedEntrySchema = z.strictObject({
  id: z
    .enum(FINDING_IDS, 'expected the id of a finding, such as "overcut"')
    .describe('which finding'),
  side: z
    .string('expected the name of a file in this folder')
    .min(1, 'expected the name of a file in this folder')
    .describe(
      'name of the file, in the folder that this one lies in; of a sheet with that of its side: ' +
        '"album.json: A"',
    ),
  fromSeconds: seconds.describe(
    'where the accepted stretch begins, seconds from the first sample of the program; ' +
      'null for a finding about the whole side',
  ),
  untilSeconds: seconds.describe('where it ends; null together with fromSeconds'),
  severity: z
    .enum(['note', 'caution', 'fault'], 'expected note, caution or fault')
    .describe('how grave it was; left out: whatever it is')
    .optional(),
  value: z
    .number('expected a number, or null')
    .nullable()
    .describe(
      'how much there was of it: metres, ratio, dBFS, Hz or count as its id has it; null where it ' +
        'has none; left out: however much it is',
    )
    .optional(),
  reason: z
    .string('expected a reason in words')
    .regex(/\S/, 'expected a reason in words')
    .describe('why the house cuts it all the same'),
  audioSha256: z
    .string('expected 64 hexadecimal digits')
    .regex(/^[0-9a-f]{64}$/, 'expected 64 hexadecimal digits, lower case')
    .describe('SHA-256 of the sound alone, frame by frame as it lies in the file'),
});

/** Findings that the house knows and cuts all the same, for the files of one folder. */
export const acceptedSchema = z
  .strictObject({
    format: z.literal(ACCEPTED_FORMAT, `expected "${ACCEPTED_FORMAT}"`),
    accepted: z.array(acceptedEntrySchema.superRefine(checkSpan), 'expected a list of entries'),
  })
  .describe('Accepted findings of the files in a folder; JSON with comments.');

export type AcceptedEntry = z.infer<typeof acceptedEntrySchema>;

function checkSpan(
  { fromSeconds, untilSeconds }: { fromSeconds: number | null; untilSeconds: number | null },
  context: z.RefinementCtx,
): void {
  const both = fromSeconds !== null && untilSeconds !== null;
  if (both ? untilSeconds >= fromSeconds : fromSeconds === untilSeconds) return;
  const message = both
    ? `expected no less than fromSeconds, ${fromSeconds}`
    : 'expected null in fromSeconds and untilSeconds, or in neither';
  context.addIssue({ code: 'custom', path: ['untilSeconds'], message });
}
