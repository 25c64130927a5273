import * as z from 'zod';
import { FINDING_IDS } from '../model/forecast-types.js';
import { db, place } from './measures-schema.js';

const sideName = { name: z.string(), path: z.string() };

/** The album's common level: an additive part of the document and of the summary line. */
export const commonLevelSchema = z
  .strictObject({
    levelDb: db.describe(
      'dB, to 0.01: at which all sides fit and trace; null if one holds at none, or none has sound',
    ),
    setBy: z
      .array(
        z.strictObject({
          ...sideName,
          limitedBy: z
            .strictObject({ id: z.enum(FINDING_IDS), atSeconds: place })
            .nullable()
            .describe('What the next louder level would break; null where nothing does.'),
        }),
      )
      .describe('The sides that hold no higher than any other.'),
    sides: z
      .array(
        z.strictObject({
          ...sideName,
          recommendedDb: db.describe('dB, to 0.01: how loud the side could go alone'),
          givesAwayDb: db.describe('dB, to 0.01: its own level less the common one'),
        }),
      )
      .describe('In input order.'),
    leftOut: z
      .array(z.strictObject({ ...sideName, reason: z.literal('silent') }))
      .describe('Sides that have no say.'),
  })
  .describe('The one level for all sides, what sets it, and what the others give away.');

export type CommonLevelJson = z.infer<typeof commonLevelSchema>;
