import * as z from 'zod';
import { FINDING_IDS } from '../model/forecast-types.js';
import { db, duration, hz, mm, place, ratio, um } from './measures-schema.js';

/** One of several tracks of a side, of the plan that is executed. */
export const trackSchema = z.strictObject({
  name: z.string(),
  startsAtSeconds: place,
  durationSeconds: duration,
  startDiameterMm: mm,
  endDiameterMm: mm,
  averageDb: db.describe(
    'mean square of the velocity of both walls, dB re a 1 kHz sine of referenceVelocity, at the ' +
      'planned level; null in silence',
  ),
  loudestDb: db.describe('the same of its loudest quarter turn'),
  loudestAtSeconds: place,
  meanFrequencyHz: hz.describe(
    'Hz, to 0.1: rms acceleration over 2π times rms velocity; the higher, the more treble for ' +
      'its level; null in silence',
  ),
  landMinUm: um,
  landMinAtSeconds: place,
  bendShareSpherical: ratio.describe('share of its worst second under the spherical tip'),
  bendShareLine: ratio.describe('share of its worst second under the line tip'),
  worst: z
    .strictObject({
      id: z.enum(FINDING_IDS),
      severity: z.enum(['note', 'caution', 'fault']),
      atSeconds: place,
    })
    .nullable()
    .describe('the worst finding that touches it'),
});

/** The running order that bends least; never applied by itself. */
export const orderSchema = z.strictObject({
  tracks: z.array(z.int()).describe('places in `tracks`, from 0: the first is to come first'),
  bendShareBefore: ratio.describe('share of all samples under the spherical tip, as the side is'),
  bendShare: ratio.describe('the same in this order'),
  isExhaustive: z.boolean().describe('false: of more than twelve tracks not every order is tried'),
});

export type OrderJson = z.infer<typeof orderSchema>;
export type TrackJson = z.infer<typeof trackSchema>;
