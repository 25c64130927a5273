import * as z from 'zod';
import { flag, length, numberIn, oneOf, pitch, ratioUpTo, speed, wholeIn } from './notation.js';

const MACHINE_TEXT = 'expected the fields of machine in braces, such as { "gain": 1 }';

const machineSchema = z
  .strictObject(
    {
      gain: numberIn(0, 10).describe('Factor on the envelopes it reads.'),
      advanceTurns: numberIn(0, 8).describe('How far ahead of the cut it sees, turns.'),
      holdTurns: numberIn(0, 8).describe('How long it remembers the inner wall, turns.'),
      openSlew: length.nullable().describe('Pitch change per quarter turn; null: pitchOpenSlew.'),
      closeSlew: length.nullable().describe('Pitch change per quarter turn; null: pitchCloseSlew.'),
    },
    { error: refusal(MACHINE_TEXT) },
  )
  .describe("The lathe's own automation, as the planner `machine` imitates it.");

const DEPTH_METER_TEXT =
  'expected a list of two entries or more, such as ' +
  '[{ "reading": 20, "width": "40um" }, { "reading": 45, "width": "74um" }]';

const depthMeterRowSchema = z.strictObject({
  reading: numberIn(-1e6, 1e6).describe('What the depth meter shows.'),
  width: length.describe('Top width of the unmodulated groove then.'),
});

const depthMeterSchema = z
  .array(depthMeterRowSchema, { error: DEPTH_METER_TEXT })
  .min(2, { error: DEPTH_METER_TEXT });

const STEPS_TEXT = 'expected a list of numbers from 10 to 2000, such as [150, 300]';

/**
 * A profile with every field, in the notation of the file: lengths as strings with a unit.
 * Frequencies in Hz, levels in dB, times in seconds, as the names say.
 */
export const profileSchema = z.strictObject({
  disc: oneOf([12, 10, 7]).describe('Nominal diameter of the disc, inches.'),
  rpm: numberIn(10, 100).describe('33 means 33⅓; anything else is taken as measured.'),
  speedTolerance: ratioUpTo(0.05).describe('Largest unknown error of the speed.'),
  speedFactor: oneOf([1, 0.5]).describe('0.5: lathe and program both run at half speed.'),
  medium: oneOf(['lacquer', 'metal']).describe('Metal needs depthMax and landMin.'),
  startDiameter: length.describe('Where the program starts.'),
  innerDiameter: length.describe('Inside of which no program may lie.'),
  preferredEndDiameter: length.nullable().describe('Where the house likes a side to end.'),
  silentTurns: wholeIn(1, 20).describe('Unmodulated turns before and after the program.'),
  leadInPitch: pitch,
  leadOutPitch: pitch,
  finishingDiameter: length.describe('Of the closed groove at the end.'),
  bandPitch: pitch.describe('Pitch of the marker between two tracks.'),
  bandSeconds: numberIn(0.1, 60).describe('How long the marker runs.'),

  referenceVelocity: speed.describe('Lateral peak that a 1 kHz sine of referenceDbfs cuts.'),
  referenceDbfs: numberIn(-60, 0).describe('Peak of that sine; full-scale sine: 0 dBFS.'),
  levelStep: numberIn(0.01, 6).describe('Step of the level control, dB.'),
  polarity: oneOf([1, -1]).describe('-1 turns both channels over.'),
  swapChannels: flag,
  channelBalanceDb: numberIn(-6, 6).describe('Left up by half of it, right down by half.'),
  subsonicHz: numberIn(1, 100).describe("The chain's own second-order high-pass."),
  ellipticalHz: numberIn(10, 2000).nullable().describe('High-pass on the difference; null: none.'),
  ellipticalOrder: oneOf([1, 2]).describe('6 or 12 dB per octave.'),
  ellipticalSteps: z
    .array(numberIn(10, 2000), { error: STEPS_TEXT })
    .min(1, { error: STEPS_TEXT })
    .nullable()
    .describe('Corners the elliptical filter can be set to; null: any.'),

  basePitch: pitch.describe('Pitch without modulation.'),
  pitchStep: length.nullable().describe('Step of the pitch control; null: continuous.'),
  pitchMax: pitch,
  pitchOpenSlew: length.describe('How fast the pitch can open, a quarter turn.'),
  pitchCloseSlew: length.describe('How fast the pitch can close, a quarter turn.'),
  pitchTolerance: length.describe('How far the advance of a turn may be off.'),
  timingTolerance: wholeIn(0, 16).describe('Quarter turns that the pitch may be early or late.'),
  landMin: length.describe('Land to be kept between two turns.'),
  echoLand: length.describe('Land wanted between a quiet and a loud turn.'),
  executes: oneOf(['machine', 'plan', 'fixed']).describe('Whose pitch the lathe cuts.'),
  machine: machineSchema,

  baseWidth: length.describe('Top width of the groove without modulation.'),
  widthMin: length.describe('Least top width at any moment.'),
  widthPerLateral: numberIn(0, 2).describe('Half-width added per lateral motion.'),
  depthMax: length.describe('Deepest cut the coating allows.'),
  depthOpenSlew: length.describe('How fast the half-width can open, a quarter turn.'),
  depthCloseSlew: length.describe('How fast the half-width can close, a quarter turn.'),
  depthTolerance: length.describe('How far the half-width may be off.'),
  bottomRadius: length.describe('Of the cutting stylus.'),
  depthMeter: depthMeterSchema.nullable().describe('Readings and the widths they stand for.'),

  playbackTip: length.describe('Radius of the spherical playback stylus.'),
  lineTip: length.describe('Radius at the groove wall of the line-contact stylus.'),
  facetCaution: numberIn(0.05, 5).describe('Edge velocity over groove speed.'),
  facetFault: numberIn(0.05, 5).describe('Edge velocity over groove speed.'),

  lowBandHz: numberIn(30, 2000).describe('Under it the motion is judged as bass.'),
  headLimit: numberIn(1, 1e12)
    .nullable()
    .describe("Mean-square acceleration the house's meter allows, (m/s²)²."),
});

/** What a profile file may hold: any of the fields; what is missing comes from the defaults. */
export const profileFileSchema = profileSchema
  .partial()
  .extend({ machine: machineSchema.partial().optional() })
  .describe('A furrow profile: the lathe and the house. JSON with comments.');

/**
 * Every field there is; one inside of another has the other's name and a point before it. In front
 * stand those that are meant by pitch and width alone, as their options are called.
 */
export const KNOWN_FIELDS: readonly string[] = [
  'basePitch',
  'baseWidth',
  ...Object.keys(profileSchema.shape),
  ...Object.keys(machineSchema.shape).map((name) => `machine.${name}`),
  ...Object.keys(depthMeterRowSchema.shape).map((name) => `depthMeter.${name}`),
];

export type Profile = z.infer<typeof profileSchema>;
export type ProfileFields = z.infer<typeof profileFileSchema>;

/** Words for a value that is no object at all; unknown keys keep their own. */
function refusal(text: string) {
  return ({ code }: { readonly code?: string }) => (code === 'invalid_type' ? text : undefined);
}
