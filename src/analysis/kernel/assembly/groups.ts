import { CURVATURE_SHARE, RIPPLE, rise, SLOPE_SHARE } from './interpolate';
import { displacement, displacementMask, motionEnd } from './rings';
import { frameAt, left, right } from './vector';

/**
 * Upper bounds of ±u_L and ±u_R over groups of frames, by which the maxima of a bin are found
 * without looking at each of its frames: a peak between frames is no higher than the frame it is
 * next to and `rise` there; s²/c is taken as |s|, which at a top it is never over, since a division
 * at each frame costs more than the few groups it saves.
 */
export const GROUP_SHIFT: i32 = 5;
export const GROUP: i32 = 1 << GROUP_SHIFT;

/** Per group, in a ring: bounds of u_L, u_R, −u_L, −u_R. */
let ring: usize = 0;
let mask: i32 = 0;
let groupsDone: i32 = 0;

export function reserveGroups(frames: i32): void {
  const count = frames >> GROUP_SHIFT;
  mask = count - 1;
  ring = heap.alloc(<usize>count << 5);
  memory.fill(ring, 0, <usize>count << 5);
}

// @ts-ignore: decorator
@inline
function groupAt(group: i32): usize {
  return ring + (<usize>(group & mask) << 5);
}

/** Bounds the groups whose frames and the one after them are there. */
export function boundGroups(): void {
  while (((groupsDone + 1) << GROUP_SHIFT) < motionEnd) {
    boundGroup(groupsDone);
    groupsDone++;
  }
}

function boundGroup(group: i32): void {
  const first = group << GROUP_SHIFT;
  const none = f64x2.splat(0);
  const curvatureShare = f64x2.splat(CURVATURE_SHARE);
  const slopeShare = f64x2.splat(SLOPE_SHARE);
  const run = frameAt(displacement, (first - 1) & displacementMask);
  let before = v128.load(run);
  let at = v128.load(run, 16);
  let up = f64x2.splat(-Infinity);
  let down = up;
  for (let n = 0; n < GROUP; n++) {
    const after = v128.load(frameAt(run, n), 32);
    const curvature = f64x2.sub(f64x2.add(at, at), f64x2.add(before, after));
    const slope = f64x2.sub(after, before);
    const steepness = f64x2.abs(slope);
    const bend = f64x2.abs(curvature);
    const isTop = f64x2.le(steepness, bend);
    const change = v128.and(
      isTop, f64x2.add(f64x2.mul(slopeShare, steepness), f64x2.mul(curvatureShare, bend)));
    const isPeak = f64x2.gt(curvature, none);
    up = f64x2.pmax(up, f64x2.add(at, v128.and(isPeak, change)));
    down = f64x2.pmax(down, f64x2.sub(v128.andnot(change, isPeak), at));
    before = at;
    at = after;
  }
  const ripple = f64x2.splat(RIPPLE);
  v128.store(groupAt(group), f64x2.add(up, f64x2.mul(ripple, f64x2.abs(up))));
  v128.store(groupAt(group), f64x2.add(down, f64x2.mul(ripple, f64x2.abs(down))), 16);
}

/** Bound of wl·u_L + wr·u_R over a group. */
// @ts-ignore: decorator
@inline
export function groupBound(group: i32, wl: f64, wr: f64): f64 {
  const at = groupAt(group);
  const leftPart = wl < 0 ? -wl * load<f64>(at, 16) : wl * load<f64>(at);
  const rightPart = wr < 0 ? -wr * load<f64>(at, 24) : wr * load<f64>(at, 8);
  return leftPart + rightPart;
}

/** Bound of −u_L over all groups that hold a frame from `first` to `last`. */
export function innerBound(first: i32, last: i32): f64 {
  let most: f64 = -Infinity;
  for (let group = first >> GROUP_SHIFT; group <= last >> GROUP_SHIFT; group++) {
    most = max<f64>(most, load<f64>(groupAt(group), 16));
  }
  return most;
}

/** Most groups of a bin. */
export const MOST_IN_BIN: i32 = 2048;
const outerBounds: usize = memory.data(MOST_IN_BIN * 8, 16);
let outerFirst: i32 = 0;

/** Makes the outer bounds of the groups of a bin, which `outerBound` then gives. */
export function boundOuter(first: i32, last: i32): void {
  outerFirst = first;
  for (let group = first; group <= last; group++) {
    store<f64>(outerBounds + (<usize>(group - first) << 3), outerBoundOf(group));
  }
}

/** Bound of u_R over a group of the bin in hand and the frames next to it. */
// @ts-ignore: decorator
@inline
export function outerBound(group: i32): f64 {
  return load<f64>(outerBounds + (<usize>(group - outerFirst) << 3));
}

function outerBoundOf(group: i32): f64 {
  const first = group << GROUP_SHIFT;
  const beside = max<f64>(frameBound(first - 1), frameBound(first + GROUP));
  return max<f64>(load<f64>(groupAt(group), 8), beside);
}

function frameBound(frame: i32): f64 {
  const run = frameAt(displacement, (frame - 1) & displacementMask);
  const before = load<f64>(run, 8);
  const at = load<f64>(run, 24);
  const after = load<f64>(run, 40);
  return at + rise(before, at, after);
}
