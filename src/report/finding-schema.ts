import * as z from 'zod';
import { FINDING_IDS } from '../model/forecast-types.js';
import { hz, place, wall } from './measures-schema.js';

export const findingSchema = z.strictObject({
  id: z.enum(FINDING_IDS),
  severity: z.enum(['note', 'caution', 'fault']),
  atSeconds: place.describe('where, seconds of the program; null: the whole file'),
  untilSeconds: place,
  track: z
    .string()
    .nullable()
    .optional()
    .describe('of a side of several tracks only: the track it begins in; null: none'),
  trackSeconds: place
    .optional()
    .describe(
      'of a side of several tracks only: where in that track, seconds from its first sample',
    ),
  value: z.number().nullable().describe('in `unit`'),
  limit: z.number().nullable().describe('in `unit`'),
  unit: z.enum(['um', 'mm', 'ratio', 'dBFS', 'Hz', 'count']).nullable(),
  wall: wall.nullable(),
  frequencyHz: hz,
  message: z.string(),
  remedy: z.string(),
  accepted: z
    .string()
    .nullable()
    .describe('why the house cuts it all the same, so that it does not count; null: it counts'),
});

export type FindingJson = z.infer<typeof findingSchema>;
