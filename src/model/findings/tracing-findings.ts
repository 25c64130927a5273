import type { Metres } from '../../units.js';
import type { Finding, FindingId } from '../forecast-types.js';
import { SHARE_LIMIT } from '../limits.js';
import type { Plan } from '../plan.js';
import { type PlannedSide, quarterStart } from '../planned-side.js';
import { strongestTreble } from '../strongest-frequency.js';
import { bendShares, emptyShareRows, facetShares, type WindowShares } from '../worst-second.js';
import { finding } from './finding.js';
import { spansOf } from './spans.js';

/**
 * `facet` and `tight-bend`: seconds of which more than a hundredth is over a limit; overlapping
 * ones as one, with the worst share of them, and with wall and frequency of the quarter that has
 * most of it. Where the limit of a fault is passed there is no
 * caution beside it.
 * @param rows are overwritten
 */
export function tracingFindings(
  side: PlannedSide,
  plan: Plan,
  rows = emptyShareRows(side),
): Finding[] {
  const { facetCaution, facetFault, playbackTip, lineTip } = side.settings;
  const facet = (limit: number) =>
    worstAround(facetShares(side, plan, limit, rows), side.programCount);
  const bend = (tip: Metres) => worstAround(bendShares(side, plan, tip, rows), side.programCount);
  return [
    ...shareFindings(side, 'facet', facet(facetCaution), facet(facetFault)),
    ...shareFindings(side, 'tight-bend', bend(playbackTip), bend(lineTip)),
  ];
}

function shareFindings(side: PlannedSide, id: FindingId, caution: Worst, fault: Worst): Finding[] {
  const isFault = (quarter: number) => fault.shares[quarter]! > SHARE_LIMIT;
  const isCaution = (quarter: number) =>
    !isFault(quarter) && caution.shares[quarter]! > SHARE_LIMIT;
  return [
    ...spanFindings(side, id, 'fault', fault, isFault),
    ...spanFindings(side, id, 'caution', caution, isCaution),
  ];
}

/** The worst of the windows around each quarter: its share, and the quarter that has most of it. */
interface Worst {
  readonly shares: Float64Array;
  readonly places: Int32Array;
}

function worstAround({ shares, own, quarters }: WindowShares, programCount: number): Worst {
  const worst = { shares: new Float64Array(programCount), places: new Int32Array(programCount) };
  for (let window = 0; window < shares.length; window++) {
    const share = shares[window]!;
    if (share === 0) continue;
    let place = window;
    for (let quarter = window; quarter < window + quarters; quarter++) {
      if (own[quarter]! > own[place]!) place = quarter;
    }
    for (let quarter = window; quarter < window + quarters; quarter++) {
      if (share <= worst.shares[quarter]!) continue;
      worst.shares[quarter] = share;
      worst.places[quarter] = place;
    }
  }
  return worst;
}

function spanFindings(
  side: PlannedSide,
  id: FindingId,
  severity: 'caution' | 'fault',
  { shares, places }: Worst,
  isWrong: (quarter: number) => boolean,
): Finding[] {
  const isWorse = (a: number, b: number) => shares[a]! > shares[b]!;
  return spansOf(0, side.programCount, isWrong, isWorse).map(({ first, last, worst }) =>
    finding(id, severity, {
      atSeconds: quarterStart(side, side.lead + first),
      untilSeconds: quarterStart(side, side.lead + last + 1),
      value: shares[worst]!,
      limit: SHARE_LIMIT,
      unit: 'ratio',
      wall: brighterWall(side, places[worst]!),
      frequency: strongestTreble(side.motion, places[worst]!, 'both'),
    }),
  );
}

function brighterWall({ motion }: PlannedSide, quarter: number): 'left' | 'right' | 'both' {
  const left = motion.left.accelerationMeanSquare[quarter]!;
  const right = motion.right.accelerationMeanSquare[quarter]!;
  if (left > 2 * right) return 'left';
  return right > 2 * left ? 'right' : 'both';
}
