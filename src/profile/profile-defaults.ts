import type { Profile } from './profile-schema.js';

/** What depends on the size of the disc. */
type DiscFields = 'disc' | 'rpm' | 'startDiameter' | 'innerDiameter' | 'finishingDiameter';

/**
 * furrow's default profile, to be replaced by the house's own figures.
 * Fields without a source are furrow's choice.
 */
export const COMMON_DEFAULTS: Omit<Profile, DiscFields> = {
  speedTolerance: '0.1%', // IEC 60098:2020, 5.6, allows 0.5 %
  speedFactor: 1,
  medium: 'lacquer',
  preferredEndDiameter: null,
  silentTurns: 1,
  leadInPitch: '1.2mm', // IEC 98:1987, 8.4
  leadOutPitch: '6.4mm', // IEC 98:1987, 8.8
  bandPitch: '1.5mm', // RIAA, from a secondary text: at most 1.5875 mm
  bandSeconds: 1, // common practice, no published source: 0.25 to 2 s

  referenceVelocity: '7cm/s', // common practice, no published source
  referenceDbfs: -10, // common practice, no published source
  levelStep: 0.5,
  polarity: 1,
  swapChannels: false,
  channelBalanceDb: 0,
  subsonicHz: 20,
  ellipticalHz: null,
  ellipticalOrder: 1,
  ellipticalSteps: null,

  basePitch: '300lpi', // common practice, no published source
  pitchStep: null,
  pitchMax: '500um',
  pitchOpenSlew: '80um',
  pitchCloseSlew: '80um',
  pitchTolerance: '1.5um',
  timingTolerance: 1,
  landMin: '0.5mil', // from memory: below about that, echo is likely
  echoLand: '1mil',
  executes: 'machine',
  machine: { gain: 1, advanceTurns: 1, holdTurns: 1, openSlew: null, closeSlew: null },

  baseWidth: '2mil', // common practice, no published source
  widthMin: '1mil', // RIAA, from a secondary text
  widthPerLateral: 0,
  depthMax: '5mil', // Boden, Basic Disc Mastering, 1981, as quoted: 127 µm
  depthOpenSlew: '10um',
  depthCloseSlew: '5um',
  depthTolerance: '2.5um',
  bottomRadius: '4um', // from memory: at most, for stereo
  depthMeter: null,

  playbackTip: '18um', // published comparison tables: 13 to 18 µm
  lineTip: '8um', // published comparison tables
  facetCaution: 0.7,
  facetFault: 1,

  lowBandHz: 300,
  headLimit: null,
};

/** Innermost diameters: RIAA (10" from memory); finishing grooves: IEC 98:1987, 8.9. */
export const DISC_DEFAULTS: Readonly<Record<12 | 10 | 7, Pick<Profile, DiscFields>>> = {
  12: {
    disc: 12,
    rpm: 33,
    startDiameter: '292.1mm', // RIAA, 11½ inches
    innerDiameter: '120.65mm',
    finishingDiameter: '106.4mm',
  },
  10: {
    disc: 10,
    rpm: 33,
    startDiameter: '241.8mm', // IEC 98:1987, 8.5
    innerDiameter: '120.65mm',
    finishingDiameter: '106.4mm',
  },
  7: {
    disc: 7,
    rpm: 45, // common practice, no published source
    startDiameter: '168.3mm', // IEC 98:1987, 8.5
    innerDiameter: '107.95mm',
    finishingDiameter: '97.4mm',
  },
};
