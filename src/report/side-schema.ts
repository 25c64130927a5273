import * as z from 'zod';
import { SOUND_CONTAINERS } from '../analysis/sound-file.js';
import { FINDING_IDS } from '../model/forecast-types.js';
import { profileSchema } from '../profile/profile-schema.js';
import { comparisonSchema } from './comparison-schema.js';
import { findingSchema } from './finding-schema.js';
import { handSchema } from './hand-schema.js';
import {
  db,
  duration,
  hz,
  lpi,
  meanSquareAcceleration,
  mil,
  mm,
  percent,
  place,
  ratio,
  turnCount,
  um,
  wall,
} from './measures-schema.js';
import { planSchema, quartersSchema } from './plan-schema.js';
import { orderSchema, trackSchema } from './track-schema.js';

export const sourceSchema = z.strictObject({
  path: z.string(),
  container: z.enum(SOUND_CONTAINERS),
  encoding: z.enum(['pcm', 'float']),
  bitDepth: z.int(),
  sampleRate: z.number(),
  channels: z.literal([1, 2]),
  frames: z.int(),
  durationSeconds: duration,
});

const programSchema = z.strictObject({
  loudnessLufs: db.describe('integrated loudness, ITU-R BS.1770; null under its gates'),
  truePeakDbtp: db.describe('largest peak between samples, ITU-R BS.1770, dB re full scale'),
  samplePeakDbfs: db.describe('largest sample, dB re full scale'),
  averageDb: db.describe(
    'root mean square of both channels over the whole program, dB re full scale: a sine that ' +
      'peaks at full scale in both reads -3.01; null in silence',
  ),
});

const setupSchema = z
  .strictObject({
    levelDb: db.describe(
      'the planned level, or the recommended one if that is lower; with headroom.recommendedDb ' +
        'null no level holds, and this is the planned one',
    ),
    basePitchLpi: lpi.describe('lines per inch, to 0.01, of a pitch that pitchStep allows'),
    widthMil: mil,
    meterReading: z.number().nullable().describe('of the depth meter; null outside its table'),
    ellipticalHz: hz.describe('Hz; null: no elliptical filter'),
  })
  .describe('What to dial in.');

const headroomSchema = z
  .strictObject({
    fillDb: db.describe('the largest level at which the program fits the radius'),
    traceDb: db.describe('the largest level without a fault'),
    recommendedDb: db.describe('the smaller, rounded down to levelStep'),
    limitedBy: z.strictObject({ id: z.enum(FINDING_IDS), atSeconds: place }).nullable(),
  })
  .describe('Levels, not gains; null where -12 to +12 dB holds none.');

const channelHeadLoadSchema = z.strictObject({
  oneSecondM2PerS4: meanSquareAcceleration.describe(
    '(m/s²)², to 1: the largest mean square of the acceleration over a second; in whole quarter ' +
      'turns, the number nearest to it',
  ),
  tenSecondsM2PerS4: meanSquareAcceleration.describe('(m/s²)², to 1: the same over ten seconds'),
  limitRatio: ratio.describe('the larger of the two over headLimit, to 0.0001; null without one'),
});

const headLoadSchema = z
  .strictObject({ left: channelHeadLoadSchema, right: channelHeadLoadSchema })
  .describe(
    "What the cutter head's coils bear at the planned level, on the lathe's clock. No verdict: " +
      "a head's thermal limit is its maker's.",
  );

const survivesSchema = z.strictObject({
  speedPercent: percent,
  depthUm: um,
  delaySeconds: duration.describe('seconds, to 0.001; null: beyond two turns'),
});

const hotSpotSchema = z.strictObject({
  atSeconds: place,
  turn: turnCount,
  radiusMm: mm,
  diameterMm: mm,
  landUm: um,
  landNominalUm: um,
  pitchUm: um,
  cause: z.enum(['lateral-low', 'lateral-high', 'vertical', 'width', 'one-wall']),
  frequencyHz: hz,
  wall,
  overcutDepthUm: um,
  reachesContact: z.boolean(),
  survives: survivesSchema.nullable().describe('how far off the lathe may be until land is gone'),
  track: z.string().nullable().describe('null in a gap and on a side of one file'),
});

const voidAcceptanceSchema = z.strictObject({
  id: z.enum(FINDING_IDS),
  fromSeconds: place,
  untilSeconds: place,
  reason: z.string().describe('why it had been accepted'),
  why: z
    .enum(['audio-changed', 'audio-unknown', 'outgrown'])
    .describe(
      'audio-changed: the sound is not what was accepted; audio-unknown: it was not hashed; ' +
        'outgrown: the finding reaches beyond the accepted stretch',
    ),
});

/** One side. */
export const sideSchema = z.strictObject({
  name: z.string(),
  settings: profileSchema.describe('The resolved profile, every field, as a profile writes it.'),
  sources: z.array(sourceSchema),
  readFrom: z
    .enum(['audio', 'motion'])
    .describe('motion: a saved one was read; then speedPercent is null, for want of sound'),
  durationSeconds: duration,
  turns: turnCount,
  levelDb: db,
  program: programSchema,
  planner: z.enum(['fixed', 'machine', 'turn-ahead', 'tightest']).describe('Which one `plan` is.'),
  executes: z.enum(['machine', 'plan', 'fixed']).describe('Whose plan the verdict is about.'),
  executesIsSet: z.boolean().describe('False: no profile says so, the verdict assumes it.'),
  verdict: z.enum(['clear', 'caution', 'fault']),
  setup: setupSchema,
  plan: planSchema,
  machine: planSchema,
  fixed: planSchema,
  tightest: z.strictObject({ radiusUsedMm: mm }).nullable(),
  headroom: headroomSchema,
  headLoad: headLoadSchema,
  hotSpots: z.array(hotSpotSchema),
  findings: z.array(findingSchema),
  voidAcceptances: z
    .array(voidAcceptanceSchema)
    .describe('What the house had accepted and counts all the same.'),
  against: comparisonSchema.optional().describe('With --against only.'),
  hand: handSchema.optional().describe('Of a side of a sheet only: what is set by hand.'),
  tracks: z
    .array(trackSchema)
    .optional()
    .describe('Of a side of several tracks only, in their order.'),
  order: orderSchema.nullable().optional().describe('With --order only; null: nothing may move.'),
  quarters: quartersSchema.optional().describe('With --quarters only.'),
});

export type SideJson = z.infer<typeof sideSchema>;
export type PlanJson = z.infer<typeof planSchema>;
export type QuartersJson = z.infer<typeof quartersSchema>;
export type HotSpotJson = z.infer<typeof hotSpotSchema>;
