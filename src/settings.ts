import type { Hertz, Metres, MetresPerSecond, MetresPerTurn, Seconds } from './units.js';

/** The lathe's own automation, as far as the `machine` planner imitates it. */
export interface MachineSettings {
  /** Factor on the envelopes it reads, 1 for a lathe that opens by exactly what it sees. */
  readonly gain: number;
  /** How far ahead of the cut it sees the outer wall, turns. */
  readonly advanceTurns: number;
  /** How long it remembers the inner wall, turns. */
  readonly holdTurns: number;
  /** Own slews, pitch change per quarter turn; null takes the profile's. */
  readonly openSlew: MetresPerTurn | null;
  readonly closeSlew: MetresPerTurn | null;
}

/**
 * The resolved profile of a lathe and a house: what `src/profile.ts` makes of defaults, profile
 * file and flags, frozen. SI throughout; `…Db` and `rpm` keep their names.
 */
export interface Settings {
  readonly disc: 12 | 10 | 7;
  readonly rpm: number;
  /** Largest unknown relative speed error. */
  readonly speedTolerance: number;
  /** 0.5 when lathe and program both run at half speed, else 1. */
  readonly speedFactor: number;
  readonly medium: 'lacquer' | 'metal';
  readonly startDiameter: Metres;
  readonly innerDiameter: Metres;
  readonly preferredEndDiameter: Metres | null;
  readonly silentTurns: number;
  readonly leadInPitch: MetresPerTurn;
  readonly leadOutPitch: MetresPerTurn;
  readonly finishingDiameter: Metres;
  readonly bandPitch: MetresPerTurn;
  readonly bandSeconds: Seconds;

  /** Lateral peak velocity that an in-phase 1 kHz sine of `referenceDbfs` cuts. */
  readonly referenceVelocity: MetresPerSecond;
  readonly referenceDbfs: number;
  readonly levelStep: number;
  readonly polarity: 1 | -1;
  readonly swapChannels: boolean;
  readonly channelBalanceDb: number;
  readonly subsonicHz: Hertz;
  readonly ellipticalHz: Hertz | null;
  readonly ellipticalOrder: 1 | 2;
  readonly ellipticalSteps: readonly Hertz[] | null;

  readonly basePitch: MetresPerTurn;
  readonly pitchStep: MetresPerTurn | null;
  readonly pitchMax: MetresPerTurn;
  readonly pitchOpenSlew: MetresPerTurn;
  readonly pitchCloseSlew: MetresPerTurn;
  readonly pitchTolerance: Metres;
  /** Quarter turns that the plan may be executed early or late. */
  readonly timingTolerance: number;
  readonly landMin: Metres;
  readonly echoLand: Metres;
  readonly executes: 'machine' | 'plan' | 'fixed';
  /** True when profile or flags say what the lathe executes; the report says so when not. */
  readonly executesIsSet: boolean;
  readonly machine: MachineSettings;

  readonly baseWidth: Metres;
  readonly widthMin: Metres;
  readonly widthPerLateral: number;
  readonly depthMax: Metres;
  readonly depthOpenSlew: Metres;
  readonly depthCloseSlew: Metres;
  readonly depthTolerance: Metres;
  readonly bottomRadius: Metres;
  /** Depth-meter readings and the top width each stands for, ascending; null without a table. */
  readonly depthMeter: readonly { readonly reading: number; readonly width: Metres }[] | null;

  readonly playbackTip: Metres;
  readonly lineTip: Metres;
  readonly facetCaution: number;
  readonly facetFault: number;

  readonly lowBandHz: Hertz;
  /** Mean-square acceleration the house's meter allows, (m/s²)²; null without one. */
  readonly headLimit: number | null;
}

export const PLANNERS = ['fixed', 'machine', 'turn-ahead', 'tightest'] as const;
export type Planner = (typeof PLANNERS)[number];
