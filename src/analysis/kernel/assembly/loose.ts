import { closingMaximum } from './closing';
import { GROUP, GROUP_SHIFT, innerBound, outerBound } from './groups';
import { isLocalMaximum, lookAtRing, peakNear, peakPlace, riseAt, signalAt } from './interpolate';
import { displacement, displacementMask, earliestTaps, latestTaps, slackFrames, turnFrames } from './rings';
import { seek, wallAt } from './seek';

/**
 * Largest √2·(u_R(t) − u_L(t − T + δ)) over |δ| ≤ slack and t between two places: either δ is at
 * one of its ends, or u_L has a trough there and u_R a peak or an end of the span.
 * @param approach the same at δ = 0, which it is never under
 */
export function looseMaximum(from: f64, until: f64, approach: f64): f64 {
  const early = closingMaximum(from, until, turnFrames + slackFrames, earliestTaps, approach);
  const late = closingMaximum(from, until, turnFrames - slackFrames, latestTaps, early);
  let largest = late * Math.SQRT1_2;
  largest = looseAtEnd(from, largest);
  largest = looseAtEnd(until, largest);
  const firstGroup = <i32>Math.floor(from) >> GROUP_SHIFT;
  const lastGroup = <i32>Math.ceil(until) >> GROUP_SHIFT;
  const most = facingBound(firstGroup, lastGroup);
  for (let group = firstGroup; group <= lastGroup; group++) {
    if (!(outerBound(group) + most > largest)) continue;
    const facing = facingBound(group, group);
    if (outerBound(group) + facing > largest) {
      largest = climbPeaks(group, from, until, facing, largest);
    }
  }
  return Math.SQRT2 * largest;
}

/** Bound of −u_L over all windows of the peaks of some groups. */
function facingBound(firstGroup: i32, lastGroup: i32): f64 {
  const first = <f64>(firstGroup << GROUP_SHIFT) - turnFrames - slackFrames;
  const last = <f64>((lastGroup + 1) << GROUP_SHIFT) - turnFrames + slackFrames;
  return innerBound(<i32>Math.floor(first) - 2, <i32>Math.ceil(last) + 2);
}

/** Raises `best` by an end of the span. */
function looseAtEnd(place: f64, best: f64): f64 {
  return withFacing(wallAt(place, 0, 1), place, best);
}

/** Raises `best` by u_R at a place and the largest −u_L over the window that faces it. */
function withFacing(outer: f64, place: f64, best: f64): f64 {
  const from = place - turnFrames - slackFrames;
  const until = place - turnFrames + slackFrames;
  const ends = max<f64>(wallAt(from, -1, 0), wallAt(until, -1, 0));
  return outer + seek(from, until, -1, 0, max<f64>(best - outer, ends));
}

/** Raises `best` by the peaks of u_R next to a group's frames, each with what faces it. */
function climbPeaks(group: i32, from: f64, until: f64, facing: f64, best: f64): f64 {
  const first = max<i32>(<i32>Math.floor(from), group << GROUP_SHIFT);
  const end = min<i32>(<i32>Math.ceil(until) + 1, (group + 1) << GROUP_SHIFT);
  let largest = best;
  lookAtGroup(group);
  for (let n = first; n < end; n++) {
    if (!isLocalMaximum(n)) continue;
    const at = signalAt(n);
    if (!(at + riseAt(n) + facing > largest)) continue;
    const peak = peakNear(n);
    const place = peakPlace;
    if (peak + facing > largest && place >= from && place <= until) {
      largest = withFacing(peak, place, largest);
      lookAtGroup(group);
    }
  }
  return largest;
}

function lookAtGroup(group: i32): void {
  lookAtRing(displacement, displacementMask, 0, 1, group << GROUP_SHIFT, GROUP);
}
