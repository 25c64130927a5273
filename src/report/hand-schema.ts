import * as z from 'zod';
import { db, duration, place, um } from './measures-schema.js';

/** What the operator sets by hand along a side. */
export const handSchema = z.strictObject({
  basePitch: z.array(z.strictObject({ fromSeconds: place, pitchUm: um })),
  baseWidth: z.array(z.strictObject({ fromSeconds: place, widthUm: um })),
  bands: z
    .array(z.strictObject({ fromSeconds: place, untilSeconds: place, pitchUm: um }))
    .describe('the markers between tracks'),
  trims: z
    .array(
      z.strictObject({
        fromSeconds: place,
        untilSeconds: place,
        gainDb: db,
        fadeInSeconds: duration,
        fadeOutSeconds: duration,
      }),
    )
    .optional()
    .describe('tracks whose level the sheet changes; left out where it changes none'),
});

export type HandJson = z.infer<typeof handSchema>;
