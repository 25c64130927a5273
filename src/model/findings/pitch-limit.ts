import { QUARTERS_PER_TURN } from '../../analysis/motion.js';
import { turnAdvance } from '../disc.js';
import type { Finding } from '../forecast-types.js';
import { FIRST_JUDGED, LENGTH_MARGIN } from '../limits.js';
import { valueAt } from '../nodes.js';
import type { Plan } from '../plan.js';
import { binStart, type PlannedSide } from '../planned-side.js';
import { windowMaximum } from '../planners/window-maximum.js';
import { type Verified, verify } from '../verify.js';
import { finding } from './finding.js';
import { spansOf } from './spans.js';

/** `pitch-limit`: what pitchMax, or the ramp before a loud start, takes from the land. */
export function pitchLimitFindings(side: PlannedSide, verified: Verified): Finding[] {
  const ramp = rampFinding(side, verified.plan);
  return [...(ramp === null ? [] : [ramp]), ...clipFindings(side, verified)];
}

/** Whether there can be any; whether the land of a plan falls short need not be known for that. */
export function mayPassPitchLimit(side: PlannedSide, plan: Plan): boolean {
  return passesRamp(side, plan) || isClipped(side, plan);
}

function isClipped({ settings, count }: PlannedSide, { wanted }: Plan): boolean {
  for (let quarter = 0; quarter < count; quarter++) {
    if (wanted[quarter]! > settings.pitchMax + LENGTH_MARGIN) return true;
  }
  return false;
}

/** Land is short where pitchMax has clipped one of the pitches that make the advance there. */
function clipFindings(side: PlannedSide, { plan, land, landBin }: Verified): Finding[] {
  if (!isClipped(side, plan)) return [];
  const { pitchMax } = side.settings;
  const wanted = (quarter: number) =>
    windowMaximum(plan.wanted, quarter - QUARTERS_PER_TURN, quarter);
  const spans = spansOf(
    FIRST_JUDGED,
    side.count,
    (quarter) => isShort(side, land[quarter]!) && wanted(quarter) > pitchMax + LENGTH_MARGIN,
    (a, b) => wanted(a) > wanted(b),
  );
  return spans.map(({ first, last, worst }) =>
    finding('pitch-limit', 'fault', {
      atSeconds: binStart(side, landBin[first]!),
      untilSeconds: binStart(side, landBin[last]! + 1),
      value: wanted(worst),
      limit: pitchMax,
      unit: 'metre',
      detail: 'pitch-max',
    }),
  );
}

/**
 * The lead-in ends at the base pitch of the first silent turn, from where the pitch opens by at most its slew. Where the
 * planned quarters before a loud start are too few for that, and the land of the program or of
 * later silent turns falls short for it, the rest is this finding; the plan itself is not clipped.
 * It is told where the land first falls short: the mean pitch of the turn up to there, A, as
 * planned and as the ramp gives it.
 */
function rampFinding(side: PlannedSide, plan: Plan): Finding | null {
  if (!passesRamp(side, plan)) return null;
  const pitch = plan.pitch.map((planned, quarter) =>
    Math.min(planned, reachable(side, plan, quarter)),
  );
  const advance = turnAdvance(pitch, side.basePitch[0]!);
  const planned = verify(side, plan).land;
  const { land, landBin } = verify(side, { ...plan, pitch, advance });
  for (let quarter = FIRST_JUDGED; quarter < side.count; quarter++) {
    const isRampsFault = land[quarter]! < planned[quarter]! - LENGTH_MARGIN;
    if (!isRampsFault || !isShort(side, land[quarter]!)) continue;
    const atSeconds = binStart(side, landBin[quarter]!);
    return finding('pitch-limit', 'fault', {
      atSeconds,
      value: valueAt(side, plan.advance, atSeconds),
      limit: valueAt(side, advance, atSeconds),
      unit: 'metre',
      detail: 'ramp',
    });
  }
  return null;
}

/** Whether any pitch is wider than the ramp from the lead-in gives. */
function passesRamp(side: PlannedSide, plan: Plan): boolean {
  for (let quarter = 0; quarter < side.count; quarter++) {
    const reached = reachable(side, plan, quarter);
    // From there on nothing is out of reach.
    if (reached >= side.settings.pitchMax) return false;
    if (plan.pitch[quarter]! > reached + LENGTH_MARGIN) return true;
  }
  return false;
}

/** The widest pitch of a quarter that the lead-in's can open to. */
function reachable({ settings, basePitch }: PlannedSide, plan: Plan, quarter: number): number {
  const { machine, pitchOpenSlew } = settings;
  const slew = plan.planner === 'machine' ? (machine.openSlew ?? pitchOpenSlew) : pitchOpenSlew;
  return basePitch[0]! + slew * (quarter + 1);
}

function isShort({ settings }: PlannedSide, land: number): boolean {
  return land < settings.landMin - LENGTH_MARGIN;
}
