import type { Finding, SourceFacts, Verdict } from '../forecast-types.js';
import type { PlannedSide } from '../planned-side.js';
import type { Verified } from '../verify.js';
import type { ShareRows } from '../worst-second.js';
import { bassFindings } from './bass-findings.js';
import { echoFindings } from './echo-findings.js';
import { fileFindings } from './file-findings.js';
import { gapFindings } from './gap-findings.js';
import { grooveFindings } from './groove-findings.js';
import { jumpFindings } from './jump-findings.js';
import { landFindings } from './land-findings.js';
import { lengthFindings } from './length-findings.js';
import { mergeNear } from './merge-near.js';
import { pitchLimitFindings } from './pitch-limit.js';
import { standardFindings } from './standard-findings.js';
import { tracingFindings } from './tracing-findings.js';

const WORST_FIRST = ['fault', 'caution', 'note'] as const;

/**
 * Everything there is to say of a plan and of its file; the worst first, then in time.
 * @param rows are overwritten
 */
export function allFindings(
  side: PlannedSide,
  verified: Verified,
  source: SourceFacts,
  rows?: ShareRows,
): Finding[] {
  const { plan } = verified;
  const findings = [
    ...fileFindings(side.motion.program, source),
    ...jumpFindings(side.motion, side.settings, source),
    ...gapFindings(side.motion.program.silence, side.hand.tracks),
    ...lengthFindings(side, plan),
    ...pitchLimitFindings(side, verified),
    ...landFindings(side, verified),
    ...grooveFindings(side, verified),
    ...tracingFindings(side, plan, rows),
    ...bassFindings(side, plan.gain),
    ...echoFindings(side, verified),
    ...standardFindings(side),
  ];
  const told = mergeNear(findings, side.motion.turnSeconds);
  return told.sort((a, b) => rank(a) - rank(b) || place(a) - place(b));
}

/** The worst severity; notes leave a side clear, and what the house has accepted does not count. */
export function verdictOf(findings: readonly Pick<Finding, 'severity' | 'accepted'>[]): Verdict {
  const open = findings.filter(({ accepted }) => accepted === undefined);
  if (open.some(({ severity }) => severity === 'fault')) return 'fault';
  return open.some(({ severity }) => severity === 'caution') ? 'caution' : 'clear';
}

function rank({ severity }: Finding): number {
  return WORST_FIRST.indexOf(severity);
}

/** What is about the whole file comes first. */
function place({ atSeconds }: Finding): number {
  return atSeconds ?? -1e9;
}
