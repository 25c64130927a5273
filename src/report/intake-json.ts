import { type IntakeFinding, isBrokenRule } from '../intake/broken-rule.js';
import type { IntakeResult } from '../intake/intake-result.js';
import { findingToJson } from './finding-json.js';
import { intakeFindingText } from './intake-finding-text.js';
import type { IntakeFileJson } from './intake-schema.js';
import { roundDb, roundSeconds, toMm } from './numbers.js';

/** A file's judgement as the output writes it: rounded, with the unit in each name. */
export function intakeToJson(result: IntakeResult): IntakeFileJson {
  const { worst, source, settings } = result;
  return {
    path: result.path,
    verdict: result.verdict,
    worst:
      worst === null
        ? null
        : {
            id: worst.id,
            severity: worst.severity,
            atSeconds: roundSeconds(worst.atSeconds),
            message: intakeFindingText(worst, { settings, units: 'metric' }).message,
          },
    durationSeconds: roundSeconds(result.durationSeconds),
    spareMm: toMm(result.spare),
    levelDb: roundDb(result.levelDb),
    recommendedDb: roundDb(result.recommendedDb),
    executes: result.executes,
    source:
      source === null ? null : { ...source, durationSeconds: roundSeconds(source.durationSeconds) },
    findings: result.findings.map((finding) => intakeFindingToJson(finding, result)),
    ignored: result.ignored,
    notJudged: [...result.notJudged],
  };
}

function intakeFindingToJson(
  finding: IntakeFinding,
  { settings }: IntakeResult,
): IntakeFileJson['findings'][number] {
  if (!isBrokenRule(finding)) return findingToJson(finding, settings);
  const { message, remedy } = intakeFindingText(finding, { settings, units: 'metric' });
  const { id, severity, atSeconds } = finding;
  return { id, severity, atSeconds: roundSeconds(atSeconds), message, remedy };
}
