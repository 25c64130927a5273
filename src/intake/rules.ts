import type { SoundContainer } from '../analysis/sound-file.js';
import type { Severity } from '../model/forecast-types.js';
import type { Hertz, Metres, Seconds } from '../units.js';
import type { IntakeId } from './broken-rule.js';
import type { NamePattern } from './name-pattern.js';

/** A longest side, for a format and, where it says so, from a level on. */
export interface LongestSide {
  readonly disc: number;
  readonly rpm: number;
  readonly fromLevelDb: number | null;
  readonly most: Seconds;
}

/** How much silence there may be at one end of a program; at least one of the two is a number. */
export interface SilenceRule {
  readonly least: Seconds | null;
  readonly most: Seconds | null;
}

/** A house's own rules for arriving files, in SI; null: no rule. */
export interface Rules {
  readonly sampleRates: readonly Hertz[] | null;
  readonly bitDepths: readonly (number | 'float')[] | null;
  /** As written: `WAV` stands for all of its kinds. */
  readonly containers: readonly (SoundContainer | 'WAV')[] | null;
  readonly longest: readonly LongestSide[];
  readonly leastLand: Metres | null;
  /** Of the low band's vertical motion at the planned level. */
  readonly mostVerticalLow: Metres | null;
  readonly headSilence: SilenceRule | null;
  readonly tailSilence: SilenceRule | null;
  /** Level that a sample must reach to be no silence, dBFS. */
  readonly silenceDbfs: number;
  readonly name: NamePattern | null;
  /** What becomes of findings, by their ids; `ignore` leaves them out. */
  readonly severity: Readonly<Partial<Record<IntakeId | 'mixed-formats', Severity | 'ignore'>>>;
}

/**
 * Peak under which the ends of a program count as silent where a house says nothing else, dBFS.
 * Common practice, no published source.
 */
export const SILENCE_DBFS = -60;

/** What is judged where a house gives no rules of its own. */
export const NO_RULES: Rules = {
  sampleRates: null,
  bitDepths: null,
  containers: null,
  longest: [],
  leastLand: null,
  mostVerticalLow: null,
  headSilence: null,
  tailSilence: null,
  silenceDbfs: SILENCE_DBFS,
  name: null,
  severity: {},
};
