import * as z from 'zod';
import { SOUND_CONTAINERS } from '../analysis/sound-file.js';
import { COLUMNS } from './motion-columns.js';
import { MOST_FILE_BYTES, MOST_QUARTERS } from './motion-layout.js';

const positive = z.number().positive();
const channels = z.tuple([z.number(), z.number()]).readonly();
/** In the order in which a forecast from audio has them, so that its JSON is the same. */
const sourceSchema = z.strictObject({
  container: z.enum(SOUND_CONTAINERS),
  encoding: z.enum(['pcm', 'float']),
  bitDepth: z.int().positive(),
  channels: z.literal([1, 2]),
  sampleRate: positive,
  frames: z.int().positive(),
  durationSeconds: positive,
});

const settingsSchema = z.strictObject({
  rpm: positive,
  speedTolerance: z.number(),
  speedFactor: positive,
  referenceVelocity: positive,
  referenceDbfs: z.number(),
  polarity: z.literal([1, -1]),
  swapChannels: z.boolean(),
  channelBalanceDb: z.number(),
  subsonicHz: positive,
  ellipticalHz: positive.nullable(),
  ellipticalOrder: z.literal([1, 2]),
  lowBandHz: positive,
});

const span = z.strictObject({ fromSeconds: z.number(), untilSeconds: z.number() });

const programSchema = z.strictObject({
  meanSquare: channels,
  mean: channels,
  samplePeak: channels,
  truePeak: channels,
  loudnessLufs: z.number().nullable(),
  clippedRuns: z.int().nonnegative(),
  firstClipSeconds: z.number().nullable(),
  longestClip: span.nullable(),
  correlation: z.number(),
  identicalChannels: z.boolean(),
  ultrasonicMeanSquare: z.number(),
  silence: z.strictObject({
    count: z.int().nonnegative(),
    seconds: z.number().nonnegative(),
    first: z.array(span).readonly(),
  }),
  jumps: z.strictObject({
    count: z.int().nonnegative(),
    largest: z
      .array(
        z.strictObject({
          atSeconds: z.number(),
          channel: z.enum(['left', 'right']),
          size: z.number(),
          around: z.number(),
        }),
      )
      .readonly(),
  }),
});

/** The head of a motion file: all that is no column, and how many bytes each column takes. */
export const motionHeadSchema = z.strictObject({
  name: z.string(),
  source: sourceSchema,
  truncated: z.boolean(),
  audioSha256: z
    .string()
    .regex(/^[0-9a-f]{64}$/)
    .nullable(),
  settings: settingsSchema,
  turnSeconds: positive,
  durationSeconds: positive,
  quarterCount: z.int().positive().max(MOST_QUARTERS),
  program: programSchema,
  columns: z
    .array(
      z.strictObject({
        name: z.string(),
        bytes: z.int().positive().max(MOST_FILE_BYTES),
      }),
    )
    .refine(
      (columns) =>
        columns.length === COLUMNS.length &&
        columns.every(({ name }, index) => name === COLUMNS[index]?.name),
      'the columns are not those of this version',
    ),
});

export type MotionHead = z.infer<typeof motionHeadSchema>;
