import { boundOf, innerBound, likeliestGroup, nextOver, outers } from './bounds';
import { closingMaximum } from './closing';
import { GROUP_SHIFT, rightRise } from './groups';
import { framesOver, takeWalls } from './heights';
import { isLocalMaximum, lookAtRing, peakNear, peakPlace, riseAt, signalAt } from './interpolate';
import { displacement, displacementMask, earliestTaps, latestTaps, slackFrames, turnFrames } from './rings';
import { firstGroup, lastGroup, seekLeftDown, spanOf, wallAt } from './seek';

/**
 * Largest √2·(u_R(t) − u_L(t − T + δ)) over |δ| ≤ slack and t between two places: either δ is at
 * one of its ends, or u_L has a trough there and u_R a peak or an end of the span.
 * @param approach the same at δ = 0, which it is never under
 */
export function looseMaximum(from: f64, until: f64, approach: f64): f64 {
  const early = closingMaximum(from, until, turnFrames + slackFrames, earliestTaps, approach);
  const late = closingMaximum(from, until, turnFrames - slackFrames, latestTaps, early);
  const first = firstGroup(from);
  const count = lastGroup(until) - first + 1;
  const most = facingBound(first, first + count - 1);
  let largest = late * Math.SQRT1_2;
  const likeliest = likeliestGroup(outers, count, largest - most);
  if (likeliest < 0) return Math.SQRT2 * largest;
  largest = climbOuter(first + likeliest, boundOf(outers, likeliest), from, until, largest);
  for (let n = nextOver(outers, count, 0, largest - most); n < count; ) {
    if (n != likeliest) {
      largest = climbOuter(first + n, boundOf(outers, n), from, until, largest);
    }
    n = nextOver(outers, count, n + 1, largest - most);
  }
  largest = looseAtEnd(from, first, boundOf(outers, 0), largest);
  largest = looseAtEnd(until, first + count - 1, boundOf(outers, count - 1), largest);
  return Math.SQRT2 * largest;
}

/** Bound of −u_L over all windows of the peaks of some groups. */
function facingBound(firstGroup: i32, lastGroup: i32): f64 {
  const first = <f64>(firstGroup << GROUP_SHIFT) - turnFrames - slackFrames;
  const last = <f64>((lastGroup + 1) << GROUP_SHIFT) - turnFrames + slackFrames;
  return innerBound(<i32>Math.floor(first) - 2, <i32>Math.ceil(last) + 2);
}

/** Raises `best` by the peaks of u_R next to a group's frames, each with what faces it. */
function climbOuter(group: i32, bound: f64, from: f64, until: f64, best: f64): f64 {
  const facing = facingBound(group, group);
  if (!(bound + facing > best)) return best;
  takeWalls(group, 0, 1);
  const frames = framesOver(group, from, until, best - facing, <f64>rightRise(group));
  if (frames == 0) return best;
  const start = group << GROUP_SHIFT;
  let largest = best;
  lookAtRights(start, frames);
  for (let left = frames; left != 0; left &= left - 1) {
    const n = start + ctz(left);
    if (!isLocalMaximum(n) || !(signalAt(n) + riseAt(n) + facing > largest)) continue;
    const peak = peakNear(n);
    const place = peakPlace;
    if (peak + facing > largest && place >= from && place <= until) {
      largest = withFacing(peak, place, largest);
      lookAtRights(start, frames);
    }
  }
  return largest;
}

function lookAtRights(start: i32, frames: u32): void {
  lookAtRing(displacement, displacementMask, 0, 1, start + ctz(frames), spanOf(frames));
}

/** Raises `best` by an end of the span, which lies in a group or next to it. */
function looseAtEnd(place: f64, group: i32, bound: f64, best: f64): f64 {
  if (!(bound + facingBound(group, group) > best)) return best;
  return withFacing(wallAt(place, 0, 1), place, best);
}

/** Raises `best` by u_R at a place and the largest −u_L over the window that faces it. */
function withFacing(outer: f64, place: f64, best: f64): f64 {
  const from = place - turnFrames - slackFrames;
  const until = place - turnFrames + slackFrames;
  const least = best - outer;
  const inner = seekLeftDown(from, until, 1, least);
  return inner > least ? outer + inner : best;
}
