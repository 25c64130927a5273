import * as z from 'zod';
import { FINDING_IDS } from '../model/forecast-types.js';
import { hz, place, wall } from './measures-schema.js';

const span = z.strictObject({
  atSeconds: z.number(),
  untilSeconds: z.number().describe('its end, to a millionth of a second'),
});

export type SpanJson = z.infer<typeof span>;

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
  unit: z.enum(['um', 'mm', 'ratio', 'dBFS', 'Hz', 's', 'count']).nullable(),
  wall: wall.nullable(),
  frequencyHz: hz,
  count: z
    .int()
    .optional()
    .describe(
      'of `gap-inside`: how many stretches; of `jump`: how many in all, if more than are told',
    ),
  longest: span.optional().describe('of `clipped`: the longest run'),
  spans: z.array(span).optional().describe('of `gap-inside`: the first 32 stretches'),
  accelerationMPerS2: z
    .number()
    .optional()
    .describe('of `jump`: the largest acceleration of its quarter turn, at level 0 dB'),
  message: z.string(),
  remedy: z.string(),
  accepted: z
    .string()
    .nullable()
    .describe('why the house cuts it all the same, so that it does not count; null: it counts'),
});

export type FindingJson = z.infer<typeof findingSchema>;
