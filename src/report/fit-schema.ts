import * as z from 'zod';
import { FINDING_IDS } from '../model/forecast-types.js';
import { profileSchema } from '../profile/profile-schema.js';
import { PLANNERS } from '../settings.js';
import { FAILURE_CODES } from './failure.js';
import { findingSchema } from './finding-schema.js';
import { db, duration, hz, lpi, mm, place, turnCount, um } from './measures-schema.js';

export const FIT_FORMAT = 'furrow.fit/1';

const planner = z.enum(PLANNERS);
const id = z.enum(FINDING_IDS);
const disc = z.literal([12, 10, 7]);

const headroom = z
  .strictObject({
    fillDb: db.describe('the largest level that fits; null: none from -12 to +12 dB'),
    traceDb: db.describe('the largest level without a fault from what is cut; null: none'),
    recommendedDb: db.describe('the smaller, rounded down to levelStep; null: none'),
    limitedBy: z.strictObject({ id, atSeconds: place }).nullable(),
  })
  .describe('Levels re the profile.');

const fault = z.strictObject({ id, atSeconds: place, untilSeconds: place });

const span = { fromSeconds: place, untilSeconds: place };
const order = z.literal([1, 2]);

/** What is done. Those whose kind ends in -there have their seconds. */
const remedy = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('pitch-there'), ...span, pitchUm: um, pitchLpi: lpi }),
  z.strictObject({ kind: z.literal('width-there'), ...span, widthUm: um }),
  z.strictObject({ kind: z.literal('level-there'), ...span, gainDb: db }),
  z.strictObject({ kind: z.literal('elliptical-there'), ...span, ellipticalHz: hz, order }),
  z.strictObject({ kind: z.literal('bell-there'), ...span, frequencyHz: hz, gainDb: db }),
  z.strictObject({ kind: z.literal('shelf-there'), ...span, frequencyHz: hz, gainDb: db }),
  z.strictObject({ kind: z.literal('silence'), quarterTurns: z.int() }),
  z.strictObject({
    kind: z.literal('gap'),
    track: z.int().describe('the gap before it; the first is 1'),
    name: z.string(),
    quarterTurns: z.int().describe('how much longer'),
  }),
  z.strictObject({
    kind: z.literal('track-outward'),
    track: z.int(),
    name: z.string(),
    toPlace: z.int(),
    order: z.array(z.int()).describe('of all tracks, as the sheet counts them'),
  }),
  z.strictObject({ kind: z.literal('order'), order: z.array(z.int()) }),
  z.strictObject({ kind: z.literal('base-pitch'), pitchUm: um, pitchLpi: lpi }),
  z.strictObject({ kind: z.literal('base-width'), widthUm: um }),
  z.strictObject({ kind: z.literal('polarity'), polarity: z.literal([1, -1]) }),
  z.strictObject({ kind: z.literal('level'), gainDb: db }),
  z.strictObject({ kind: z.literal('elliptical'), ellipticalHz: hz, order }),
  z.strictObject({ kind: z.literal('rpm'), rpm: z.number() }),
]);

const weighedRemedy = z.strictObject({
  remedy,
  text: z.string(),
  cost: z.number().describe('against the others, without a unit'),
  mends: z.array(z.int()).describe('places in `faults`'),
  brings: z.int().describe('faults that were not there'),
  fillDb: db,
  traceDb: db,
  gainDb: db.describe('change of the largest level that fits and traces; null: one is unknown'),
  spareGainMm: mm.describe('change of the spare radius at the planned level, mm'),
});

const judged = z.strictObject({
  planner,
  endDiameterMm: mm,
  spareMm: mm,
  faults: z.int(),
  first: fault.nullable(),
});

const sideFit = z.strictObject({
  name: z.string(),
  settings: profileSchema,
  sources: z.array(z.string()).describe('paths'),
  durationSeconds: duration,
  turns: turnCount,
  levelDb: db,
  executed: planner,
  verdict: z.enum(['clear', 'caution', 'fault']),
  sentence: z.string(),
  findings: z.array(findingSchema),
  faults: z.array(fault).describe('those that cutting it otherwise may mend'),
  headroom: z.array(z.strictObject({ planner, headroom })),
  limits: z
    .array(
      z.strictObject({
        id,
        atSeconds: place,
        untilSeconds: place,
        levelDb: db.describe('without a fault, the passages before this one left out'),
        withoutDb: db.describe('with this one left out too'),
        costsDb: db,
      }),
    )
    .describe('what holds the level down, one after the other'),
  levels: z.array(z.strictObject({ levelDb: db, judged: z.array(judged) })),
  basePitch: z
    .strictObject({
      levelDb: db,
      widestUm: um,
      widestLpi: lpi,
      tightestUm: um,
      tightestLpi: lpi,
      missing: z
        .strictObject({ pitchUm: um, pitchLpi: lpi, faults: z.array(fault) })
        .nullable()
        .describe('where no pitch holds: the one that comes nearest, and what is wrong with it'),
    })
    .describe('the base pitches that hold a level; null: none does'),
  formats: z.array(
    z.strictObject({
      disc,
      rpm: z.number(),
      isOwn: z.boolean(),
      headroom,
      spareMm: mm,
      endDiameterMm: mm,
      faults: z.int(),
    }),
  ),
  remedies: z.array(weighedRemedy).describe('each by itself'),
  leastSet: z
    .strictObject({
      remedies: z.array(remedy),
      cost: z.number(),
      left: z.array(fault).describe('faults that are left when the changed side is measured anew'),
      headroom,
      spareMm: mm,
    })
    .nullable()
    .describe('null: no fault, or nothing mends any'),
  leftOut: z.array(
    z.enum(['no-sound', 'own-filters', 'needless-ellipticals', 'long-passage', 'many-passages']),
  ),
});

/** What `furrow fit --json` writes. */
export const fitSchema = z
  .strictObject({
    format: z.literal(FIT_FORMAT),
    furrow: z.string().describe('Version of furrow.'),
    sides: z.array(sideFit),
    failures: z.array(
      z.strictObject({ path: z.string(), code: z.enum(FAILURE_CODES), message: z.string() }),
    ),
  })
  .describe('How loud and how long sides can be, and what would mend them. Units are in the keys.');

export type FitJson = z.infer<typeof fitSchema>;
export type SideFitJson = z.infer<typeof sideFit>;
export type RemedyJson = z.infer<typeof remedy>;
