import type { SoundContainer } from '../analysis/sound-file.js';
import { FINDING_IDS, type Finding, type Severity } from '../model/forecast-types.js';
import type { Hertz, Metres, Seconds } from '../units.js';

/** What a house's own rules can find; the order in which they are told. */
export const RULE_IDS = [
  'rule-container',
  'rule-rate',
  'rule-depth',
  'rule-name',
  'rule-longest',
  'rule-land',
  'rule-vertical',
  'rule-head',
  'rule-tail',
] as const;
export type RuleId = (typeof RULE_IDS)[number];

/** Every finding that intake can tell of a file. */
export const INTAKE_IDS = [...FINDING_IDS, ...RULE_IDS] as const;
export type IntakeId = (typeof INTAKE_IDS)[number];

/** What a rule found, and what it allows. */
export type RuleBreach =
  | {
      readonly id: 'rule-container';
      readonly found: SoundContainer;
      readonly allowed: readonly string[];
    }
  | { readonly id: 'rule-rate'; readonly found: Hertz; readonly allowed: readonly Hertz[] }
  | {
      readonly id: 'rule-depth';
      readonly found: { readonly encoding: 'pcm' | 'float'; readonly bitDepth: number };
      readonly allowed: readonly (number | 'float')[];
    }
  | { readonly id: 'rule-name'; readonly found: string; readonly allowed: string }
  | {
      readonly id: 'rule-longest';
      readonly found: Seconds;
      readonly most: Seconds;
      readonly disc: number;
      readonly rpm: number;
      /** The rule is for sides that are cut from this level on; null: at any. */
      readonly fromLevelDb: number | null;
    }
  | { readonly id: 'rule-land'; readonly found: Metres; readonly least: Metres }
  | { readonly id: 'rule-vertical'; readonly found: Metres; readonly most: Metres }
  | {
      readonly id: 'rule-head' | 'rule-tail';
      readonly found: Seconds;
      readonly least: Seconds | null;
      readonly most: Seconds | null;
      /** Level that a sample must reach to be no silence. */
      readonly silenceDbfs: number;
    };

/** A rule of the house that a file breaks. */
export type BrokenRule = RuleBreach & {
  readonly severity: Severity;
  /** Program time; null for what is about the whole file. */
  readonly atSeconds: Seconds | null;
};

/** What is told of an arriving file: the forecast's findings, and the rules that it breaks. */
export type IntakeFinding = Finding | BrokenRule;

export function isBrokenRule(finding: IntakeFinding): finding is BrokenRule {
  return RULE_IDS.some((id) => id === finding.id);
}
