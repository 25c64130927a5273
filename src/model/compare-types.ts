import type { MotionSummary, ProgramChecks } from '../analysis/motion.js';
import type { Settings } from '../settings.js';
import type { Metres, Seconds } from '../units.js';
import type { Finding, SideForecast, Verdict } from './forecast-types.js';

/** A forecast that is compared with another; both were made with the same settings and level. */
export interface ComparedSide {
  readonly name: string;
  readonly settings: Settings;
  readonly program: ProgramChecks;
  readonly forecast: SideForecast;
  /** With both summaries a shift is known to some milliseconds, else to about a tenth of a second. */
  readonly motion: MotionSummary | null;
}

export interface Change<Value> {
  readonly before: Value;
  readonly after: Value;
}

/** A stretch in which the executed plan leaves less or more land than before. */
export interface LandChange {
  readonly change: 'lost' | 'gained';
  /** Program time of the new file. */
  readonly atSeconds: Seconds;
  readonly untilSeconds: Seconds;
  /** Least land of the stretch; what is over the widest limit counts as that limit. */
  readonly before: Metres;
  readonly after: Metres;
}

/** What became of a finding; each of the two in its own file's time. */
export interface FindingChange {
  readonly change: 'new' | 'gone' | 'worse' | 'better';
  /** Where, in the new file's time; null for the whole side. */
  readonly atSeconds: Seconds | null;
  /** null for a new one. */
  readonly before: Finding | null;
  /** null for one that is gone. */
  readonly after: Finding | null;
}

/** What matters of the differences between two forecasts; null where a figure does not differ so. */
export interface Comparison {
  /** Name of the file that was there before. */
  readonly name: string;
  /**
   * How much later the same music comes in the new file, negative if earlier; 0 if not by as much
   * as is heard as a shift. null: the programs are not alike at any shift that was tried.
   */
  readonly offsetSeconds: Seconds | null;
  readonly verdict: Change<Verdict>;
  readonly durationSeconds: Change<Seconds> | null;
  readonly loudnessLufs: Change<number | null> | null;
  /** Of the executed plan. */
  readonly endDiameter: Change<Metres> | null;
  readonly spare: Change<Metres> | null;
  readonly recommendedDb: Change<number | null> | null;
  readonly fillDb: Change<number | null> | null;
  readonly traceDb: Change<number | null> | null;
  /** In time order. */
  readonly land: readonly LandChange[];
  /** In time order of the new file; what is about the whole side comes first. */
  readonly findings: readonly FindingChange[];
}
