import type { Span } from '../analysis/motion.js';
import type { Planner } from '../settings.js';
import type { Hertz, Metres, MetresPerTurn, Seconds } from '../units.js';
import type { HandTrack } from './side-plan-input.js';
import type { TrackLevel } from './track-level.js';

/** Most to least harmless. */
export type Severity = 'note' | 'caution' | 'fault';
export type Verdict = 'clear' | 'caution' | 'fault';
export type Wall = 'left' | 'right' | 'both';

export const FINDING_IDS = [
  'overcut',
  'land-low',
  'lift',
  'too-deep',
  'too-long',
  'facet',
  'tight-bend',
  'low-vertical',
  'echo-risk',
  'pitch-limit',
  'ultrasonic',
  'clipped',
  'over-peak',
  'jump',
  'gap-inside',
  'dc-offset',
  'silent',
  'one-sided',
  'mono',
  'polarity',
  'truncated',
  'rate-low',
  'off-standard',
] as const;
export type FindingId = (typeof FINDING_IDS)[number];

/** What `value` and `limit` of a finding are measured in. */
export type FindingUnit =
  | 'metre'
  | 'second'
  | 'ratio'
  | 'decibel-full-scale'
  | 'hertz'
  | 'count'
  | 'none';

/** Something a mastering engineer must know, as data; words are made in report/finding-text. */
export interface Finding {
  readonly id: FindingId;
  readonly severity: Severity;
  /** Program time; null for a finding about the whole file. */
  readonly atSeconds: Seconds | null;
  readonly untilSeconds: Seconds | null;
  /** SI, in `unit`; null where there is none. */
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: FindingUnit;
  readonly wall: Wall | null;
  readonly frequency: Hertz | null;
  /** Separates what one id says of different things, such as the limit a bend share is of. */
  readonly detail: string | null;
  /** How many there are in all, where not each is a finding of its own. */
  readonly count?: number;
  /** The longest of those that are told as one. */
  readonly longest?: Span;
  /** Those that are told as one, the first of them, in their order. */
  readonly spans?: readonly Span[];
  /** The largest acceleration there at level 0 dB, m/s². */
  readonly acceleration?: number;
  /** The house knows it and cuts all the same: it does not count for the verdict. */
  readonly accepted?: { readonly reason: string };
}

/** One planner's plan, verified: extremes over all planned quarters, pitch figures the program's. */
export interface PlanReport {
  readonly radiusUsed: Metres;
  readonly startDiameter: Metres;
  readonly endDiameter: Metres;
  /** End radius − inner limit; negative if the program does not fit. */
  readonly spare: Metres;
  readonly fits: boolean;
  readonly pitchMin: MetresPerTurn;
  readonly pitchMean: MetresPerTurn;
  /** Widest of the plan: marker bands are wider. */
  readonly pitchMax: MetresPerTurn;
  readonly landMin: Metres;
  readonly landMinAtSeconds: Seconds;
  readonly widthMin: Metres;
  readonly widthMinAtSeconds: Seconds;
  readonly widthMax: Metres;
  readonly cutDepthMax: Metres;
  /** √2·|u̇| over the groove speed. */
  readonly facetMax: number;
  readonly facetMaxAtSeconds: Seconds;
  /** Least V²/|ü|; null in silence. */
  readonly bendMin: Metres | null;
  readonly bendMinAtSeconds: Seconds | null;
  /** Share of samples in the worst second with the bend under the spherical tip. */
  readonly bendShareSpherical: number;
  readonly bendShareLine: number;
}

/** A running order of a side's tracks that bends less, never applied by itself. */
export interface RunningOrder {
  /** Places in the order that the side has: the first is the track to come first. */
  readonly order: readonly number[];
  /** Share of all samples that bend tighter than the playback tip, as the side is. */
  readonly bendShareBefore: number;
  /** The same in this order; equal to it where the side's own order is as good as any. */
  readonly bendShare: number;
  /** Whether every order was looked at. */
  readonly isExhaustive: boolean;
}

export type HotSpotCause = 'lateral-low' | 'lateral-high' | 'vertical' | 'width' | 'one-wall';

/** How far off the lathe may be at a hot spot until land reaches zero; null: not looked at, or never. */
export interface Survives {
  /** Relative speed error. */
  readonly speed: number | null;
  /** Error of the half-width in both turns. */
  readonly depth: Metres | null;
  /** How late the pitch may come; null beyond two turns too. */
  readonly delay: Seconds | null;
}

export interface HotSpot {
  readonly atSeconds: Seconds;
  /** Turns from the start of the program, fractional. */
  readonly turn: number;
  readonly radius: Metres;
  readonly land: Metres;
  readonly landNominal: Metres;
  readonly pitch: MetresPerTurn;
  readonly cause: HotSpotCause;
  readonly frequency: Hertz | null;
  readonly wall: Wall;
  /** Depth under the surface at which the two walls meet; 0 without an overcut. */
  readonly overcutDepth: Metres;
  readonly reachesContact: boolean;
  readonly survives: Survives | null;
  /** The track it lies in; absent or null in a gap and on a side of one file. */
  readonly track?: string | null;
}

/** One of several tracks of a side, at the planned level and of the plan that is executed. */
export interface TrackFigures extends HandTrack, TrackLevel {
  readonly startDiameter: Metres;
  readonly endDiameter: Metres;
  readonly landMin: Metres;
  readonly landMinAtSeconds: Seconds;
  /** Share of samples in its worst second with the bend under the spherical tip. */
  readonly bendShareSpherical: number;
  readonly bendShareLine: number;
  /** The worst finding that touches it, the first of equals. */
  readonly worst: Finding | null;
}

/** The largest levels; null where the search range −12 … +12 dB holds none. */
export interface Headroom {
  readonly fillDb: number | null;
  readonly traceDb: number | null;
  readonly recommendedDb: number | null;
  readonly limitedBy: { readonly id: FindingId; readonly atSeconds: Seconds | null } | null;
}

/** Largest running mean squares of one channel's acceleration, (m/s²)². */
export interface ChannelHeadLoad {
  /** Over the whole quarter turns nearest to 1 s. */
  readonly oneSecond: number;
  /** Over the whole quarter turns nearest to 10 s. */
  readonly tenSeconds: number;
  /** The larger of the two over `headLimit`; null without a limit. */
  readonly limitRatio: number | null;
}

/** What the coils have to bear at the planned level; figures, no verdict. */
export interface HeadLoad {
  readonly left: ChannelHeadLoad;
  readonly right: ChannelHeadLoad;
}

/** Columns over the quarters the program touches. */
export interface QuarterColumns {
  readonly atSeconds: Float64Array;
  readonly radius: Float64Array;
  /** As it is cut, with each quarter's share of marker bands. */
  readonly pitch: Float64Array;
  readonly machinePitch: Float64Array;
  readonly fixedPitch: Float64Array;
  readonly widthSet: Float64Array;
  readonly widthMin: Float64Array;
  readonly widthMax: Float64Array;
  readonly cutDepthMax: Float64Array;
  readonly land: Float64Array;
  readonly landNominal: Float64Array;
  readonly machineLand: Float64Array;
  readonly fixedLand: Float64Array;
  readonly approach: Float64Array;
  readonly approachLoose: Float64Array;
  readonly lateral: Float64Array;
  readonly lift: Float64Array;
  readonly sink: Float64Array;
  readonly facetMax: Float64Array;
  /** NaN in silence. */
  readonly bendMin: Float64Array;
  readonly lowCorrelation: Float64Array;
  readonly lowVerticalShare: Float64Array;
  /** Vertical motion of the low band, √2·rms, at the planned level, m. */
  readonly lowVertical: Float64Array;
}

/** Everything the model says of a side. */
export interface SideForecast {
  readonly durationSeconds: Seconds;
  readonly turns: number;
  readonly levelDb: number;
  /** Which planner `plan` is. */
  readonly planner: Planner;
  readonly executes: 'machine' | 'plan' | 'fixed';
  readonly verdict: Verdict;
  readonly plan: PlanReport;
  readonly machine: PlanReport;
  readonly fixed: PlanReport;
  readonly tightest: { readonly radiusUsed: Metres };
  readonly headroom: Headroom;
  readonly headLoad: HeadLoad;
  readonly hotSpots: readonly HotSpot[];
  readonly findings: readonly Finding[];
  readonly quarters: QuarterColumns;
  /** In their order; of a side of several tracks only. */
  readonly tracks?: readonly TrackFigures[];
  /** Where it was asked for; null without two tracks that may move. */
  readonly order?: RunningOrder | null;
}

/** What the file says of itself, beyond its samples. */
export interface SourceFacts {
  readonly sampleRate: Hertz;
  readonly channels: 1 | 2;
  /** The file breaks off: a data size left open, or a cut last frame. */
  readonly truncated: boolean;
}
