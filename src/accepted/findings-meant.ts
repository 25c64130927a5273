import { isAboutWholeSide } from '../model/findings/whole-side.js';
import type { Finding, FindingId } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';

/** Times are told to a tenth of a second, so one that is read off may be off by half of that. */
const TOLD_TO: Seconds = 0.05;

/**
 * The findings of an id at a time; all of that id if no time is given. What is about the whole side
 * is there at any time.
 */
export function findingsMeant(
  findings: readonly Finding[],
  id: FindingId,
  at: Seconds | null,
): Finding[] {
  return findings.filter((finding) => {
    if (finding.id !== id) return false;
    if (at === null || isAboutWholeSide(finding)) return true;
    const from = finding.atSeconds ?? 0;
    const until = finding.untilSeconds ?? from;
    const slack = TOLD_TO + 1e-9;
    return at >= from - slack && at <= until + slack;
  });
}

/** `02:14.3`, `134.3` or `-00:00.4` as seconds; null if it is none of them. */
export function secondsOf(text: string): Seconds | null {
  const match = /^(-?)(?:(\d{1,4}):([0-5]?\d(?:\.\d+)?)|(\d+(?:\.\d+)?))$/.exec(text.trim());
  if (match === null) return null;
  const [, sign, minutes, rest, seconds] = match;
  const value = seconds === undefined ? 60 * Number(minutes) + Number(rest) : Number(seconds);
  return sign === '-' ? -value : value;
}
