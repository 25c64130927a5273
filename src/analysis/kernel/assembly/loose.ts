import { GROUP, GROUP_SHIFT, innerBound, outerBound } from './groups';
import { boundAt, lookAtRing, valueAt, vertex } from './interpolate';
import { displacement, displacementMask, slackFrames, turnFrames } from './rings';
import { seek } from './seek';
import { frameAt } from './vector';

/** Outputs of a sliding minimum over one group: its frames and one on each side. */
const OUTPUTS: i32 = GROUP + 2;

/** Rows over the window of a group: running minima from both ends of blocks of a window. */
let room: i32 = 0;
let prefix: usize = 0;
let suffix: usize = 0;
/** u_R less the least frame of u_L in the window, from the frame before the group on. */
const fromFrames: usize = memory.data(OUTPUTS * 8, 16);

/** Frames of a window, and where it begins against the frame it belongs to. */
let windowFrames: i32 = 0;
let windowStart: i32 = 0;

/** Largest √2·(u_R(t) − min over |δ| ≤ slack of u_L(t − T + δ)) between two places. */
export function looseMaximum(from: f64, until: f64): f64 {
  windowStart = <i32>Math.floor(-turnFrames - slackFrames);
  windowFrames = <i32>Math.ceil(-turnFrames + slackFrames) - windowStart + 1;
  reserve(OUTPUTS + windowFrames);
  const first = <i32>Math.ceil(from);
  const end = <i32>Math.ceil(until);
  let largest = max<f64>(outerAt(from) + innerAt(from), outerAt(until) + innerAt(until));
  const lastGroup = (end - 1) >> GROUP_SHIFT;
  let likeliest = -1;
  let most = largest;
  for (let group = first >> GROUP_SHIFT; group <= lastGroup; group++) {
    const bound = outerBound(group) + facingBound(group);
    if (bound > most) {
      most = bound;
      likeliest = group;
    }
  }
  if (likeliest < 0) return Math.SQRT2 * largest;
  largest = climbCandidates(likeliest, first, end, largest);
  for (let group = first >> GROUP_SHIFT; group <= lastGroup; group++) {
    if (outerBound(group) + facingBound(group) > largest) {
      largest = climbCandidates(group, first, end, largest);
    }
  }
  return Math.SQRT2 * largest;
}

function reserve(frames: i32): void {
  if (frames <= room) return;
  room = frames;
  prefix = heap.alloc(<usize>frames << 3);
  suffix = heap.alloc(<usize>frames << 3);
}

/** Bound of −u_L over all windows of a group and the frames next to it. */
function facingBound(group: i32): f64 {
  const first = (group << GROUP_SHIFT) - 1 + windowStart;
  return innerBound(first - 1, first + OUTPUTS + windowFrames);
}

/** Climbs from the local maxima of `fromFrames` whose bound is higher than `best`. */
function climbCandidates(group: i32, first: i32, end: i32, best: f64): f64 {
  const start = group << GROUP_SHIFT;
  slideMinimum(start - 1);
  const facing = facingBound(group);
  let largest = best;
  const from = max<i32>(first, start);
  const until = min<i32>(end, start + GROUP);
  for (let n = from; n < until; n++) {
    const at = fromFrames + (<usize>(n - start + 1) << 3);
    const value = load<f64>(at);
    if (!(value >= load<f64>(at - 8) && value > load<f64>(at, 8))) continue;
    lookAtRing(displacement, displacementMask, 0, 1);
    const outer = max<f64>(boundAt(n), max<f64>(boundAt(n - 1), boundAt(n + 1)));
    if (outer + facing > largest) largest = max<f64>(largest, climbLoose(n));
  }
  return largest;
}

// @ts-ignore: decorator
@inline
function leftAt(frame: i32): f64 {
  return load<f64>(frameAt(displacement, frame & displacementMask));
}

/** Fills `fromFrames`: the running minimum goes blockwise from both ends (van Herk; Gil, Werman). */
function slideMinimum(first: i32): void {
  const facing = first + windowStart;
  const count = OUTPUTS + windowFrames - 1;
  for (let block = 0; block < count; block += windowFrames) {
    const end = min<i32>(block + windowFrames, count);
    let least: f64 = Infinity;
    for (let n = block; n < end; n++) {
      least = min<f64>(least, leftAt(facing + n));
      store<f64>(prefix + (<usize>n << 3), least);
    }
    least = Infinity;
    for (let n = end - 1; n >= block; n--) {
      least = min<f64>(least, leftAt(facing + n));
      store<f64>(suffix + (<usize>n << 3), least);
    }
  }
  for (let n = 0; n < OUTPUTS; n++) {
    const behind = load<f64>(suffix + (<usize>n << 3));
    const ahead = load<f64>(prefix + (<usize>(n + windowFrames - 1) << 3));
    const outer = load<f64>(frameAt(displacement, (first + n) & displacementMask), 8);
    store<f64>(fromFrames + (<usize>n << 3), outer - min<f64>(behind, ahead));
  }
}

/** u_R at a place. */
function outerAt(place: f64): f64 {
  lookAtRing(displacement, displacementMask, 0, 1);
  return valueAt(place);
}

/** max of −u_L over the window that faces a place. */
function innerAt(place: f64): f64 {
  return seek(place - turnFrames - slackFrames, place - turnFrames + slackFrames, -1, 0);
}

/**
 * The peak next to a candidate, climbed in eighths of a frame; the parabola is laid through u_R
 * alone, since the inner part has kinks.
 */
function climbLoose(frame: i32): f64 {
  const place = <f64>frame;
  let best = outerAt(place);
  let bestInner = innerAt(place);
  let ahead = outerAt(place + 0.125);
  let aheadInner = innerAt(place + 0.125);
  let behind = outerAt(place - 0.125);
  const behindInner = innerAt(place - 0.125);
  let step = 1;
  if (!(ahead + aheadInner > behind + behindInner)) {
    step = -1;
    const exchange = ahead;
    ahead = behind;
    aheadInner = behindInner;
    behind = exchange;
  }
  for (let eighths = step; ahead + aheadInner > best + bestInner && abs(eighths) < 8; ) {
    behind = best;
    best = ahead;
    bestInner = aheadInner;
    eighths += step;
    ahead = outerAt(place + 0.125 * <f64>eighths);
    aheadInner = innerAt(place + 0.125 * <f64>eighths);
  }
  const onTop = best >= ahead && best >= behind;
  return (onTop ? vertex(behind, best, ahead) : best) + bestInner;
}
