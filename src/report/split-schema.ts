import * as z from 'zod';
import { mm } from './measures-schema.js';

/** Unbalanced sides of a sheet: an additive part of the document and of the summary line. */
export const splitSchema = z
  .strictObject({
    sheet: z.string(),
    radiusUsedMm: z.array(mm).describe('What each side takes as it is, in order.'),
    tracksPerSide: z.array(z.int()).describe('How many tracks each side takes in the best split.'),
    fullestMm: mm.describe('mm, to 0.001: what the fullest side then takes'),
  })
  .describe('Sides that are unbalanced, and the split with the least full fullest side.');

export type SplitJson = z.infer<typeof splitSchema>;
