import type { ForecastedFile } from '../forecast-result.js';
import { hasOutgrown } from '../model/compare-margins.js';
import { verdictOf } from '../model/findings/all-findings.js';
import { isAboutWholeSide } from '../model/findings/whole-side.js';
import type { Finding, Severity } from '../model/forecast-types.js';
import type { Seconds } from '../units.js';
import type { AcceptedEntry } from './accepted-schema.js';

/** Why an acceptance does not hold: the sound is another, was not hashed, or the finding grew. */
export type VoidReason = 'audio-changed' | 'audio-unknown' | 'outgrown';

export interface VoidAcceptance {
  readonly entry: AcceptedEntry;
  readonly why: VoidReason;
}

export interface AppliedAcceptances {
  /** With the accepted findings marked, and the verdict of the others. */
  readonly file: ForecastedFile;
  readonly voided: readonly VoidAcceptance[];
  /** Entries of this very sound whose finding is gone, as under another profile or level. */
  readonly stale: readonly AcceptedEntry[];
}

/** How far a finding may reach beyond what was accepted, turns: one step of the plan. */
const TOLERANCE_TURNS = 0.25;

/**
 * Marks the findings that the house has accepted: same id, same sound, no part of the finding more
 * than a quarter turn outside of the accepted stretch, and the finding not clearly worse than it was
 * accepted, as far as the entry says how bad that was. One that reaches further or is worse is not
 * accepted, whatever part of it was; its entry is void. Any severity may be accepted: the house
 * decides. An entry without a stretch accepts what is about the whole side.
 * @param entries those for this file
 */
export function applyAccepted(
  file: ForecastedFile,
  entries: readonly AcceptedEntry[],
): AppliedAcceptances {
  const tolerance = (TOLERANCE_TURNS * 60) / file.settings.rpm;
  const holding = entries.filter((entry) => soundReason(entry, file) === null);
  const findings = file.forecast.findings.map((finding) => {
    const entry = holding.find(
      (one) => isWithin(finding, one, tolerance) && !hasOutgrown(one, finding),
    );
    return entry === undefined ? finding : { ...finding, accepted: { reason: entry.reason } };
  });
  const whyVoid = (entry: AcceptedEntry): VoidReason | null =>
    soundReason(entry, file) ??
    (isOutgrown(entry, findings.filter(isOpen), tolerance) ? 'outgrown' : null);
  const voided = entries.flatMap((entry) => {
    const why = whyVoid(entry);
    return why === null ? [] : [{ entry, why }];
  });
  const stale = holding.filter(
    (entry) => !findings.some((finding) => touches(finding, entry, tolerance)),
  );
  const forecast = { ...file.forecast, findings, verdict: verdictOf(findings) };
  return { file: { ...file, forecast }, voided, stale };
}

/** Severities among the findings that count: those that nobody has accepted. */
export function openSeverities(findings: readonly Finding[]): Set<Severity> {
  return new Set(findings.filter(isOpen).map(({ severity }) => severity));
}

function isOpen({ accepted }: Finding): boolean {
  return accepted === undefined;
}

function soundReason(
  { audioSha256 }: AcceptedEntry,
  { audioSha256: found }: ForecastedFile,
): VoidReason | null {
  if (found === null) return 'audio-unknown';
  return found === audioSha256 ? null : 'audio-changed';
}

function isWithin(finding: Finding, entry: AcceptedEntry, tolerance: Seconds): boolean {
  return relation(
    finding,
    entry,
    ([from, until], [begin, end]) => from >= begin - tolerance && until <= end + tolerance,
  );
}

function touches(finding: Finding, entry: AcceptedEntry, tolerance: Seconds): boolean {
  return relation(
    finding,
    entry,
    ([from, until], [begin, end]) => from <= end + tolerance && until >= begin - tolerance,
  );
}

function isOutgrown(entry: AcceptedEntry, open: readonly Finding[], tolerance: Seconds): boolean {
  return open.some((finding) => touches(finding, entry, tolerance));
}

type Span = readonly [from: Seconds, until: Seconds];

function relation(
  finding: Finding,
  entry: AcceptedEntry,
  holds: (found: Span, accepted: Span) => boolean,
): boolean {
  if (finding.id !== entry.id) return false;
  const [from, until] = [entry.fromSeconds, entry.untilSeconds];
  if (from === null || until === null) return isAboutWholeSide(finding);
  const { atSeconds, untilSeconds } = finding;
  return atSeconds !== null && holds([atSeconds, untilSeconds ?? atSeconds], [from, until]);
}
