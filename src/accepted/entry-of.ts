import { isAboutWholeSide } from '../model/findings/whole-side.js';
import type { Finding } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import type { AcceptedEntry } from './accepted-schema.js';

/** What a finding is accepted with, beside its place. */
export interface Acceptance {
  /** Name of the file, in its folder. */
  readonly side: string;
  readonly reason: string;
  readonly audioSha256: string;
}

/**
 * The entry that accepts a finding: its stretch to a millisecond, none for the whole side; how grave
 * it is, and its value to six digits.
 */
export function entryOf(
  finding: Finding,
  { side, reason, audioSha256 }: Acceptance,
): AcceptedEntry {
  const { id, atSeconds, severity } = finding;
  const isWhole = isAboutWholeSide(finding);
  const [fromSeconds, untilSeconds] = isWhole
    ? [null, null]
    : [rounded(atSeconds), rounded(finding.untilSeconds ?? atSeconds)];
  const value = finding.value === null ? null : Number(finding.value.toPrecision(6));
  return { id, side, fromSeconds, untilSeconds, severity, value, reason, audioSha256 };
}

/** Well within the quarter turn that a finding may reach beyond its entry. */
function rounded(seconds: Seconds | null): Seconds | null {
  return seconds === null ? null : Math.round(seconds * 1000) / 1000;
}
