import { NEAR_SHARE, PEAK_SHARE, RIPPLE } from './interpolate';
import { largerFrame } from './vector';

/**
 * Upper bounds of u_R and −u_L, and of ±(u_L + u_R) and ±(u_L − u_R), which are lower than those of
 * the two added up, over groups of frames and the frame on each side of them, by which
 * the maxima of a bin are found without looking at each of its frames: no peak is higher than the
 * highest frame by more than PEAK_SHARE of the group's largest curvature.
 */
export const GROUP_SHIFT: i32 = 5;
export const GROUP: i32 = 1 << GROUP_SHIFT;

/** Groups of a ring's start that stand once more behind its end, so that four are one load. */
const MIRRORED: i32 = 4;
/** Bounds of u_R, then of −u_L: a ring of f32 for each. */
let walls: usize = 0;
let wallBytes: usize = 0;
/** Bounds of u_L + u_R, u_L − u_R and of −both, f32; the four of a group one after the other. */
let sums: usize = 0;
/** What u_L and u_R may rise by above a frame of a group, f32. */
let rises: usize = 0;
let mask: i32 = 0;

export function reserveGroups(frames: i32): void {
  const count = frames >> GROUP_SHIFT;
  mask = count - 1;
  wallBytes = <usize>(count + MIRRORED) << 2;
  walls = emptyRing(2 * wallBytes);
  sums = emptyRing(<usize>count << 4);
  rises = emptyRing(<usize>count << 3);
}

function emptyRing(bytes: usize): usize {
  const ring = heap.alloc(bytes);
  memory.fill(ring, 0, bytes);
  return ring;
}

/** Address of a group's bound of u_R, which three others stand behind. */
// @ts-ignore: decorator
@inline
export function rightBounds(group: i32): usize {
  return walls + (<usize>(group & mask) << 2);
}

/** The same of −u_L. */
// @ts-ignore: decorator
@inline
export function leftDownBounds(group: i32): usize {
  return rightBounds(group) + wallBytes;
}

/** Bounds of a group's u_L + u_R, u_L − u_R, −(u_L + u_R), u_R − u_L. */
// @ts-ignore: decorator
@inline
export function sumBounds(group: i32): v128 {
  return v128.load(sums + (<usize>(group & mask) << 4));
}

/**
 * What a peak of u_L may rise by above the frame of a group that it is next to: by NEAR_SHARE, since
 * it is not compared with the highest frame.
 */
// @ts-ignore: decorator
@inline
export function leftRise(group: i32): f32 {
  return load<f32>(rises + (<usize>(group & mask) << 3));
}

/** The same of u_R. */
// @ts-ignore: decorator
@inline
export function rightRise(group: i32): f32 {
  return load<f32>(rises + (<usize>(group & mask) << 3), 4);
}

/**
 * Bounds a group by its frames, with those beside it.
 * @param most the highest of −u_L, u_R
 * @param mostBoth the highest of u_L + u_R, u_L − u_R, and of their negatives
 * @param curvature the largest of u_L, u_R, even and odd frames apart
 */
// @ts-ignore: decorator
@inline
export function boundGroup(first: i32, most: v128, mostBoth: v128, curvature: v128): void {
  const group = first >> GROUP_SHIFT;
  // No wall is further out than sum or difference. Twice the ripple: the curvature of frames that
  // are rounded is off by less than that.
  const ripple = largerFrame(f32x4.mul(f32x4.splat(<f32>(2 * RIPPLE)), mostBoth));
  const ripples = f32x4.pmax(ripple, v128.shuffle<i32>(ripple, ripple, 1, 0, 3, 2));
  const bend = largerFrame(curvature);
  const rise = f32x4.add(ripples, f32x4.mul(f32x4.splat(<f32>PEAK_SHARE), bend));
  // Where both add up, so may what they rise by.
  const both = f32x4.add(rise, v128.shuffle<i32>(rise, rise, 1, 0, 3, 2));
  const at = <usize>(group & mask);
  v128.store(sums + (at << 4), f32x4.add(mostBoth, both));
  const near = f32x4.add(ripples, f32x4.mul(f32x4.splat(<f32>NEAR_SHARE), bend));
  v128.store64_lane(rises + (at << 3), near, 0);
  const bounds = f32x4.add(most, rise);
  putWalls(rightBounds(group), bounds);
  if (<i32>at < MIRRORED) putWalls(rightBounds(group) + (<usize>(mask + 1) << 2), bounds);
}

// @ts-ignore: decorator
@inline
function putWalls(at: usize, bounds: v128): void {
  v128.store32_lane(at, bounds, 1);
  v128.store32_lane(at + wallBytes, bounds, 0);
}

/** The highest of two sums, and of their negatives, out of those of even and odd frames. */
// @ts-ignore: decorator
@inline
export function upAndDown(most: v128, least: v128): v128 {
  return v128.shuffle<i64>(largerFrame(most), largerFrame(f32x4.neg(least)), 0, 2);
}
