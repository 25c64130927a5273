import { CURVATURE_SHARE, RIPPLE, rise, SLOPE_SHARE } from './interpolate';
import { displacement, displacementMask } from './rings';
import { frameAt, largerFrame } from './vector';

/**
 * Upper bounds of ±u_L and ±u_R over groups of frames, by which the maxima of a bin are found
 * without looking at each of its frames: a peak between frames is no higher than the highest frame
 * and `rise` with the largest curvature c of the group and the steepest slope a top can have, c.
 */
export const GROUP_SHIFT: i32 = 5;
export const GROUP: i32 = 1 << GROUP_SHIFT;

/** Per group, in a ring: bounds of u_L, u_R, −u_L, −u_R; f32. */
let ring: usize = 0;
let mask: i32 = 0;

export function reserveGroups(frames: i32): void {
  const count = frames >> GROUP_SHIFT;
  mask = count - 1;
  ring = heap.alloc(<usize>count << 4);
  memory.fill(ring, 0, <usize>count << 4);
}

// @ts-ignore: decorator
@inline
function groupAt(group: i32): usize {
  return ring + (<usize>(group & mask) << 4);
}

/** Holds the highest and the lowest of a group's even and odd frames until its curvature is known. */
// @ts-ignore: decorator
@inline
export function holdGroup(first: i32, most: v128, least: v128): void {
  const up = largerFrame(most);
  const down = largerFrame(f32x4.neg(least));
  v128.store(groupAt(first >> GROUP_SHIFT), v128.shuffle<i64>(up, down, 0, 2));
}

/** @param curvature the largest of a group's even and odd frames */
// @ts-ignore: decorator
@inline
export function boundGroup(first: i32, curvature: v128): void {
  const at = groupAt(first >> GROUP_SHIFT);
  const highest = v128.load(at);
  const share = f32x4.splat(<f32>(SLOPE_SHARE + CURVATURE_SHARE));
  const rises = f32x4.mul(share, largerFrame(curvature));
  // Twice the ripple: the curvature of frames that are rounded is off by less than that.
  const ripples = f32x4.mul(f32x4.splat(<f32>(2 * RIPPLE)), f32x4.abs(highest));
  v128.store(at, f32x4.add(highest, f32x4.add(rises, ripples)));
}

/** Bound of wl·u_L + wr·u_R over a group. */
// @ts-ignore: decorator
@inline
export function groupBound(group: i32, wl: f64, wr: f64): f64 {
  const at = groupAt(group);
  const leftPart = wl < 0 ? -wl * <f64>load<f32>(at, 8) : wl * <f64>load<f32>(at);
  const rightPart = wr < 0 ? -wr * <f64>load<f32>(at, 12) : wr * <f64>load<f32>(at, 4);
  return leftPart + rightPart;
}

/** Bound of −u_L over all groups that hold a frame from `first` to `last`. */
export function innerBound(first: i32, last: i32): f64 {
  let most: f64 = -Infinity;
  for (let group = first >> GROUP_SHIFT; group <= last >> GROUP_SHIFT; group++) {
    most = max<f64>(most, <f64>load<f32>(groupAt(group), 8));
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
  return max<f64>(<f64>load<f32>(groupAt(group), 4), beside);
}

function frameBound(frame: i32): f64 {
  const run = frameAt(displacement, (frame - 1) & displacementMask);
  const before = <f64>load<f32>(run, 4);
  const at = <f64>load<f32>(run, 12);
  const after = <f64>load<f32>(run, 20);
  return at + rise(before, at, after);
}
