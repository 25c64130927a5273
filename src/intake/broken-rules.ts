import { basename } from 'node:path';
import type { ForecastedFile } from '../forecast-result.js';
import type { Severity } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import type { BrokenRule, RuleBreach, RuleId } from './broken-rule.js';
import { fileBreaches } from './file-breaches.js';
import type { Rules } from './rules.js';
import { sideBreaches } from './side-breaches.js';
import { silenceBreaches } from './silence-breaches.js';

/** A breach, and where it is; null for the whole file. */
export interface PlacedBreach {
  readonly breach: RuleBreach;
  readonly atSeconds: Seconds | null;
}

/**
 * How grave a broken rule is where a house says nothing else: what cannot be cut as it came is a
 * fault, what can be mended at the desk a caution.
 */
const SEVERITY: Readonly<Record<RuleId, Severity>> = {
  'rule-container': 'fault',
  'rule-rate': 'fault',
  'rule-depth': 'fault',
  'rule-name': 'caution',
  'rule-longest': 'fault',
  'rule-land': 'caution',
  'rule-vertical': 'caution',
  'rule-head': 'caution',
  'rule-tail': 'caution',
};

/** The rules that a file breaks, and those that could not be judged. */
export function brokenRules(
  path: string,
  file: ForecastedFile,
  rules: Rules,
): { readonly broken: BrokenRule[]; readonly notJudged: RuleId[] } {
  const silence = silenceBreaches(file, rules);
  const placed = [
    ...fileBreaches(basename(path), file.sources, rules),
    ...sideBreaches(file, rules),
    ...silence.breaches,
  ];
  return {
    broken: placed.map(({ breach, atSeconds }) => ({
      ...breach,
      atSeconds,
      severity: SEVERITY[breach.id],
    })),
    notJudged: silence.notJudged,
  };
}
