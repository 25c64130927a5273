import type { ForecastedFile, SourceFile } from '../forecast-result.js';
import { verdictOf } from '../model/findings/all-findings.js';
import type { Finding, Severity, SideForecast, Verdict } from '../model/forecast-types.js';
import { worstFinding } from '../report/folder-worst-finding.js';
import type { Settings } from '../settings.js';
import type { Metres, Seconds } from '../units.js';
import { type BrokenRule, type IntakeFinding, isBrokenRule, RULE_IDS } from './broken-rule.js';
import { brokenRules } from './broken-rules.js';
import type { Rules } from './rules.js';

/** What is told of one file that arrived; small, so that many can be kept. */
export interface IntakeResult {
  /** As it was found. */
  readonly path: string;
  readonly verdict: Verdict;
  readonly worst: IntakeFinding | null;
  readonly durationSeconds: Seconds;
  /** End radius − inner limit of what the lathe executes, at the planned level. */
  readonly spare: Metres;
  readonly levelDb: number;
  /** The largest level that fits and traces; null where the search range holds none. */
  readonly recommendedDb: number | null;
  /** Nothing in it is loud enough to be judged, so that no level is a recommendation. */
  readonly isSilent: boolean;
  readonly executes: SideForecast['executes'];
  /**
   * The worst first, of equal severity the forecast's before the broken rules; each with the
   * severity that the rules give it.
   */
  readonly findings: readonly IntakeFinding[];
  /** Findings that the rules leave out. */
  readonly ignored: number;
  /** Rules that could not be judged: of a saved motion, what only the sound can tell. */
  readonly notJudged: readonly BrokenRule['id'][];
  readonly source: SourceFile | null;
  readonly settings: Settings;
}

const WORST_FIRST: readonly Severity[] = ['fault', 'caution', 'note'];

/** The judgement of one file: its forecast under a house's rules. */
export function intakeResult(path: string, file: ForecastedFile, rules: Rules): IntakeResult {
  const { forecast, settings } = file;
  const { broken, notJudged } = brokenRules(path, file, rules);
  const all = [...forecast.findings, ...broken];
  const findings = all
    .flatMap((finding) => ruled(finding, rules))
    .toSorted((one, other) => rank(one) - rank(other));
  return {
    path,
    verdict: verdictOf(findings),
    worst: worstOf(findings),
    durationSeconds: forecast.durationSeconds,
    spare: forecast[forecast.executes].spare,
    levelDb: forecast.levelDb,
    recommendedDb: forecast.headroom.recommendedDb,
    isSilent: forecast.findings.some(({ id }) => id === 'silent'),
    executes: forecast.executes,
    findings,
    ignored: all.length - findings.length,
    notJudged,
    source: file.sources[0] ?? null,
    settings,
  };
}

/** A finding with the severity that the rules give it; none where they ignore it. */
function ruled<F extends IntakeFinding>(finding: F, { severity }: Rules): F[] {
  const given = severity[finding.id] ?? finding.severity;
  return given === 'ignore' ? [] : [{ ...finding, severity: given }];
}

/** The finding to look at first; of equal severity the forecast's before the house's. */
function worstOf(findings: readonly IntakeFinding[]): IntakeFinding | null {
  const ofForecast = worstFinding(findings.filter((one): one is Finding => !isBrokenRule(one)));
  const [ofRules = null] = findings
    .filter(isBrokenRule)
    .toSorted(
      (one, other) =>
        rank(one) - rank(other) || RULE_IDS.indexOf(one.id) - RULE_IDS.indexOf(other.id),
    );
  if (ofForecast === null || ofRules === null) return ofForecast ?? ofRules;
  return rank(ofRules) < rank(ofForecast) ? ofRules : ofForecast;
}

function rank({ severity }: IntakeFinding): number {
  return WORST_FIRST.indexOf(severity);
}
