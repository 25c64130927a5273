import * as z from 'zod';
import { flag, length, numberIn, oneOf, pitch, wholeIn } from '../profile/notation.js';
import { profileSchema } from '../profile/profile-schema.js';

export const SHEET_FORMAT = 'furrow.sheet/1';

const LONGEST_SECONDS = 36_000;
const MOST_SAMPLES = Number.MAX_SAFE_INTEGER;

const MARKER_TEXT = 'expected true, false, or such as { "seconds": 1, "pitch": "1.5mm" }';
const markerSchema = z.strictObject({
  seconds: numberIn(0.1, 60).optional().describe("How long it runs; left out: the profile's."),
  pitch: pitch.optional().describe("Its pitch; left out: the profile's."),
});

const fromSeconds = numberIn(-600, LONGEST_SECONDS).describe(
  'From when on, seconds from the first sample of the track; less than 0 lies in the gap before.',
);
const PITCHES_TEXT = 'expected a list such as [{ "fromSeconds": 92, "pitch": "250lpi" }]';
const WIDTHS_TEXT = 'expected a list such as [{ "fromSeconds": 92, "width": "2.2mil" }]';
const pitchFromSchema = z.strictObject({ fromSeconds, pitch });
const widthFromSchema = z.strictObject({ fromSeconds, width: length });

const text = (expected: string) => z.string(expected).regex(/\S/, expected);
const seconds = numberIn(0, LONGEST_SECONDS);
const samples = wholeIn(0, MOST_SAMPLES);

const trackShape = {
  file: text('expected the path of a WAV, AIFF or FLAC file').describe('Seen from the sheet.'),
  name: text('expected a name').optional().describe("Left out: the file's."),
  pinned: flag.optional().describe('True: keeps its place whatever running order is looked for.'),
  fromSeconds: seconds.optional().describe('Where in the file the track begins.'),
  untilSeconds: seconds.optional().describe('Where in the file it ends.'),
  fromSample: samples.optional().describe('The same, to the sample; its first.'),
  untilSample: samples.optional().describe('The same, to the sample; the one after its last.'),
  gapSeconds: numberIn(0, 600).optional().describe('Silence before it; 0 unless said.'),
  trimDb: numberIn(-60, 24).optional().describe('Level against the other tracks, dB.'),
  fadeInSeconds: numberIn(0, 600).optional().describe('Raised cosine from its first sample on.'),
  fadeOutSeconds: numberIn(0, 600).optional().describe('Raised cosine to its last sample.'),
  marker: z
    .union([z.boolean(), markerSchema], { error: MARKER_TEXT })
    .optional()
    .describe('A band in the middle of the gap before it, for the eye; none unless said.'),
  ellipticalHz: profileSchema.shape.ellipticalHz.optional(),
  ellipticalOrder: profileSchema.shape.ellipticalOrder.optional(),
  basePitch: z
    .array(pitchFromSchema, { error: PITCHES_TEXT })
    .optional()
    .describe('Base pitch from a time on, until the next entry, also of a later track.'),
  baseWidth: z
    .array(widthFromSchema, { error: WIDTHS_TEXT })
    .optional()
    .describe('Base width from a time on, until the next entry, also of a later track.'),
};

/** What of a profile belongs to a side, not to the lathe or the house. */
const sideSettings = profileSchema
  .pick({
    disc: true,
    rpm: true,
    speedFactor: true,
    startDiameter: true,
    innerDiameter: true,
    preferredEndDiameter: true,
    finishingDiameter: true,
    silentTurns: true,
    leadInPitch: true,
    leadOutPitch: true,
    bandPitch: true,
    bandSeconds: true,
    channelBalanceDb: true,
    ellipticalHz: true,
    ellipticalOrder: true,
    basePitch: true,
    baseWidth: true,
    executes: true,
  })
  .partial();

const TRACKS_TEXT = 'expected a list of tracks, such as [{ "file": "one.wav" }]';
const SIDES_TEXT = 'expected a list of sides, such as [{ "name": "A", "tracks": [ … ] }]';

const trackSchema = z.strictObject(trackShape);
const sideShape = {
  name: text('expected a name').describe('Of the side; no two have the same.'),
  levelDb: numberIn(-40, 20).optional().describe('Level of the side, re the profile.'),
  ...sideSettings.shape,
  tracks: z.array(trackSchema, { error: TRACKS_TEXT }).min(1, { error: TRACKS_TEXT }),
};

/** Sides made of several tracks: JSON with comments. */
export const sheetSchema = z
  .strictObject({
    format: oneOf([SHEET_FORMAT]),
    sides: z.array(z.strictObject(sideShape), { error: SIDES_TEXT }).min(1, { error: SIDES_TEXT }),
  })
  .describe('A side sheet: sides, and their tracks in running order. JSON with comments.');

export type Sheet = z.infer<typeof sheetSchema>;
export type SheetSide = Sheet['sides'][number];
export type SheetTrack = SheetSide['tracks'][number];

/** The fields of a side that are fields of a profile. */
export const SIDE_SETTINGS: readonly string[] = Object.keys(sideSettings.shape);

const inside = (parent: string, shape: object): string[] =>
  Object.keys(shape).map((name) => `${parent}.${name}`);

/** Every field there is, with those that it lies in before it. */
export const SHEET_FIELDS: readonly string[] = [
  ...Object.keys(sheetSchema.shape),
  ...inside('sides', sideShape),
  ...inside('sides.tracks', trackShape),
  ...inside('sides.tracks.marker', markerSchema.shape),
  ...inside('sides.tracks.basePitch', pitchFromSchema.shape),
  ...inside('sides.tracks.baseWidth', widthFromSchema.shape),
];
