import * as z from 'zod';
import { place, um } from './measures-schema.js';

/** What the operator sets by hand along a side. */
export const handSchema = z.strictObject({
  basePitch: z.array(z.strictObject({ fromSeconds: place, pitchUm: um })),
  baseWidth: z.array(z.strictObject({ fromSeconds: place, widthUm: um })),
  bands: z
    .array(z.strictObject({ fromSeconds: place, untilSeconds: place, pitchUm: um }))
    .describe('the markers between tracks'),
});

export type HandJson = z.infer<typeof handSchema>;
