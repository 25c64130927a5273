import { isAboutWholeSide } from '../model/findings/whole-side.js';
import type { Finding, SideForecast } from '../model/forecast-types.js';
import type { Settings } from '../settings.js';

/**
 * Whether what is in the way of more level is a finding that the house accepts: the same id at the
 * same place, within a turn, since the limit is looked for at another level than the planned one.
 */
export function limitIsAccepted(
  { headroom: { limitedBy }, findings }: SideForecast,
  { rpm }: Settings,
): boolean {
  if (limitedBy === null) return false;
  const { id, atSeconds } = limitedBy;
  const turn = 60 / rpm;
  const isThere = (finding: Finding) => {
    if (atSeconds === null || isAboutWholeSide(finding)) return true;
    const from = finding.atSeconds ?? atSeconds;
    const until = finding.untilSeconds ?? from;
    return atSeconds >= from - turn && atSeconds <= until + turn;
  };
  return findings.some((each) => each.id === id && each.accepted !== undefined && isThere(each));
}
