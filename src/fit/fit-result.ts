import type { SourceFile } from '../forecast-result.js';
import type { BasePitchFit } from '../model/fit-base-pitch.js';
import type { LevelRow } from '../model/fit-levels.js';
import type { LimitingPassage } from '../model/fit-limits.js';
import type { Finding, Headroom, Verdict } from '../model/forecast-types.js';
import type { HandTrack } from '../model/side-plan-input.js';
import type { Planner, Settings } from '../settings.js';
import type { Metres } from '../units.js';
import type { Remedy } from './remedy.js';

/** A remedy with what it does by itself, all else as planned. */
export interface WeighedRemedy {
  readonly remedy: Remedy;
  readonly cost: number;
  /** Places in `faults` of the fit. */
  readonly mends: readonly number[];
  /** Faults that were not there. */
  readonly brings: readonly Finding[];
  /** The larger spare radius at the planned level; negative where it takes room. */
  readonly spareGain: Metres;
  readonly fillDb: number | null;
  readonly traceDb: number | null;
  /** Change of the highest level that fits and traces; null where one of the two is unknown. */
  readonly gainDb: number | null;
}

/** The remedies that are proposed together. */
export interface LeastSet {
  readonly remedies: readonly Remedy[];
  readonly cost: number;
  /** Faults that are left when the whole changed side is measured and forecast anew. */
  readonly left: readonly Finding[];
  /** How the side then stands. */
  readonly headroom: Headroom;
  readonly spare: Metres;
}

/** What a disc of another size or speed makes of the program. */
export interface FormatFit {
  readonly disc: 12 | 10 | 7;
  readonly rpm: number;
  readonly isOwn: boolean;
  readonly headroom: Headroom;
  /** At the planned level. */
  readonly spare: Metres;
  readonly endDiameter: Metres;
  readonly faults: number;
}

/** One side: how loud, how long, and what would mend it. */
export interface SideFit {
  readonly name: string;
  readonly sources: readonly SourceFile[];
  readonly settings: Settings;
  /** Of a sheet's side, in the order they were given; none of a file. */
  readonly tracks: readonly HandTrack[];
  readonly durationSeconds: number;
  readonly turns: number;
  readonly levelDb: number;
  /** The planner that is judged, and the one beside it. */
  readonly executed: Planner;
  readonly planners: readonly Planner[];
  readonly verdict: Verdict;
  readonly findings: readonly Finding[];
  readonly faults: readonly Finding[];
  readonly levels: readonly LevelRow[];
  /** In the order of `planners`. */
  readonly headrooms: readonly Headroom[];
  readonly limits: readonly LimitingPassage[];
  readonly basePitch: BasePitchFit;
  readonly formats: readonly FormatFit[];
  readonly remedies: readonly WeighedRemedy[];
  /** Null where there is no fault. */
  readonly leastSet: LeastSet | null;
  /** Kinds of remedies that were not tried, each with why, as codes for the words. */
  readonly leftOut: readonly LeftOut[];
}

export type LeftOut =
  | 'no-sound'
  | 'own-filters'
  | 'needless-ellipticals'
  | 'long-passage'
  | 'many-passages';
