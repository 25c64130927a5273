import { isTooDeep, isTooNarrow } from './findings/groove-findings.js';
import { isOvercut } from './findings/land-findings.js';
import { mayPassPitchLimit, pitchLimitFindings } from './findings/pitch-limit.js';
import type { FindingId, Headroom } from './forecast-types.js';
import { FIRST_JUDGED, SHARE_LIMIT } from './limits.js';
import type { Plan } from './plan.js';
import { binStart, landTolerance, type PlannedSide, quarterStart } from './planned-side.js';
import {
  emptyVerifiedRows,
  landOfQuarter,
  type Verified,
  type VerifiedRows,
  verify,
  widthOfQuarter,
  withPlan,
} from './verify.js';
import {
  bendShares,
  emptyShareRows,
  facetShares,
  type ShareRows,
  type WindowShares,
} from './worst-second.js';

export type Limit = NonNullable<Headroom['limitedBy']>;

/** Far more than rounding takes from a length, far less than matters, m. */
const ROUNDING = 1e-12;

/** What is worked out of a plan to find its faults. */
export interface TrialRows {
  readonly verified: VerifiedRows;
  readonly shares: ShareRows;
}

export function emptyTrialRows(side: PlannedSide): TrialRows {
  return { verified: emptyVerifiedRows(side), shares: emptyShareRows(side) };
}

/**
 * The first fault of a plan that a lower level would mend, the cheapest looked at first. A quarter
 * is looked at bin by bin only where its largest motion, wherever it lies, would be a fault.
 * @param rows are overwritten
 */
export function traceLimit(
  side: PlannedSide,
  plan: Plan,
  rows = emptyTrialRows(side),
): Limit | null {
  const { settings } = side;
  const verified = withPlan(plan, rows.verified);
  for (let quarter = 0; quarter < side.count; quarter++) {
    const limit = widthLimit(side, verified, quarter) ?? landLimit(side, verified, quarter);
    if (limit !== null) return limit;
  }
  if (mayPassPitchLimit(side, plan)) {
    const [pitchLimit] = pitchLimitFindings(side, verify(side, plan, rows.verified));
    if (pitchLimit !== undefined) return { id: pitchLimit.id, atSeconds: pitchLimit.atSeconds };
  }
  return (
    shareLimit(side, 'facet', facetShares(side, plan, settings.facetFault, rows.shares)) ??
    shareLimit(side, 'tight-bend', bendShares(side, plan, settings.lineTip, rows.shares))
  );
}

function widthLimit(side: PlannedSide, verified: Verified, quarter: number): Limit | null {
  const { halfWidth, gain } = verified.plan;
  let [narrow, wide] = [halfWidth[quarter]!, halfWidth[quarter + 1]!];
  if (wide < narrow) [narrow, wide] = [wide, narrow];
  narrow -= gain * side.liftMax[quarter]! + ROUNDING;
  wide += gain * side.sinkMax[quarter]! + ROUNDING;
  if (!isTooNarrow(side, 2 * narrow) && !isTooDeep(side, 2 * wide)) return null;
  const { widthMin, widthMinBin, widthMax } = verified;
  widthOfQuarter(side, verified, quarter);
  if (isTooNarrow(side, widthMin[quarter]!)) {
    return { id: 'lift', atSeconds: binStart(side, widthMinBin[quarter]!) };
  }
  if (isTooDeep(side, widthMax[quarter]!)) {
    return { id: 'too-deep', atSeconds: quarterStart(side, quarter) };
  }
  return null;
}

function landLimit(side: PlannedSide, verified: Verified, quarter: number): Limit | null {
  if (quarter < FIRST_JUDGED) return null;
  const { advance, facing, gain } = verified.plan;
  let free = advance[quarter]! - facing[quarter]!;
  const ends = advance[quarter + 1]! - facing[quarter + 1]!;
  if (ends < free) free = ends;
  const tolerance = landTolerance(side.settings);
  const taken = gain * side.approachLooseMax[quarter]! + tolerance + ROUNDING;
  if (!isOvercut(free - taken)) return null;
  landOfQuarter(side, verified, quarter, tolerance);
  const { land, landBin } = verified;
  if (!isOvercut(land[quarter]!)) return null;
  return { id: 'overcut', atSeconds: binStart(side, landBin[quarter]!) };
}

function shareLimit(side: PlannedSide, id: FindingId, { shares }: WindowShares): Limit | null {
  for (let window = 0; window < shares.length; window++) {
    if (shares[window]! > SHARE_LIMIT) {
      return { id, atSeconds: quarterStart(side, side.lead + window) };
    }
  }
  return null;
}
