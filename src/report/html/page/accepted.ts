import { verdictOf } from '../../../model/findings/all-findings.js';
import type { Finding, SideForecast } from '../../../model/forecast-types.js';

/** How far a finding may reach beyond what was accepted, s: less than any quarter turn. */
const SLACK = 0.2;

/**
 * A recomputed forecast with the house's acceptances: a finding of the same id that lies within an
 * accepted one is accepted; one that reaches further is not.
 */
export function withAccepted(forecast: SideForecast, accepted: readonly Finding[]): SideForecast {
  if (accepted.length === 0) return forecast;
  const findings = forecast.findings.map((finding) => {
    const by = accepted.find((one) => isWithin(finding, one))?.accepted;
    return by === undefined ? finding : { ...finding, accepted: by };
  });
  return { ...forecast, findings, verdict: verdictOf(findings) };
}

function isWithin(finding: Finding, one: Finding): boolean {
  if (finding.id !== one.id) return false;
  if (finding.atSeconds === null || one.atSeconds === null) {
    return finding.atSeconds === one.atSeconds;
  }
  const until = finding.untilSeconds ?? finding.atSeconds;
  const most = one.untilSeconds ?? one.atSeconds;
  return finding.atSeconds >= one.atSeconds - SLACK && until <= most + SLACK;
}
