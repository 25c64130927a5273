import { PEAK_SHARE, RIPPLE } from './interpolate';
import { largerFrame } from './vector';

/**
 * Upper bounds of ±u_L and ±u_R, and of ±(u_L + u_R) and ±(u_L − u_R), which are lower than those of
 * the two added up, over groups of frames and the frame on each side of them, by which
 * the maxima of a bin are found without looking at each of its frames: no peak is higher than the
 * highest frame by more than PEAK_SHARE of the group's largest curvature.
 */
export const GROUP_SHIFT: i32 = 5;
export const GROUP: i32 = 1 << GROUP_SHIFT;

/** Per group, in a ring, f32: bounds of u_L, u_R, −u_L, −u_R; then of the sum, difference and −both. */
let ring: usize = 0;
let mask: i32 = 0;

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

/**
 * Bounds a group by its frames, with those beside it.
 * @param walls the highest of u_L, u_R, −u_L, −u_R
 * @param sums the same of u_L + u_R and u_L − u_R
 * @param curvature the largest of u_L, u_R, even and odd frames apart
 */
// @ts-ignore: decorator
@inline
export function boundGroup(first: i32, walls: v128, sums: v128, curvature: v128): void {
  const at = groupAt(first >> GROUP_SHIFT);
  // Twice the ripple: the curvature of frames that are rounded is off by less than that.
  const ripples = f32x4.mul(f32x4.splat(<f32>(2 * RIPPLE)), f32x4.abs(walls));
  const rises = f32x4.add(
    f32x4.pmax(ripples, v128.shuffle<i64>(ripples, ripples, 1, 0)),
    f32x4.mul(f32x4.splat(<f32>PEAK_SHARE), largerFrame(curvature)));
  v128.store(at, f32x4.add(walls, rises));
  // Where both add up, so may what they rise by.
  const both = f32x4.add(rises, v128.shuffle<i32>(rises, rises, 1, 0, 3, 2));
  v128.store(at, f32x4.add(sums, both), 16);
}

/** The highest of left and right, and of their negatives, out of those of even and odd frames. */
// @ts-ignore: decorator
@inline
export function upAndDown(most: v128, least: v128): v128 {
  return v128.shuffle<i64>(largerFrame(most), largerFrame(f32x4.neg(least)), 0, 2);
}

/** Most groups of a bin, its dilation and what a turn's slack adds. */
const MOST_GROUPS: i32 = 4096;
/** Bounds of the groups that are looked at, in their order; f32. */
const bounds: usize = memory.data((MOST_GROUPS + 4) * 4, 16);
let boundCount: i32 = 0;

/** Bounds wl·u_L + wr·u_R over groups, wl = ±wr or one of them 0; they are looked at from now on. */
export function boundWalls(first: i32, last: i32, wl: f64, wr: f64): void {
  boundCount = last - first + 1;
  const offset = <usize>(boundIndex(wl, wr) << 2);
  const weight = <f32>max<f64>(abs(wl), abs(wr));
  for (let n = 0; n < boundCount; n++) {
    const bound = weight * load<f32>(groupAt(first + n) + offset);
    store<f32>(bounds + (<usize>n << 2), bound);
  }
  endBounds();
}

/** Which of a group's eight bounds is that of a sum of the walls with such weights. */
function boundIndex(wl: f64, wr: f64): i32 {
  if (wr == 0) return wl > 0 ? 0 : 2;
  if (wl == 0) return wr > 0 ? 1 : 3;
  const isDown = wl < 0 ? 2 : 0;
  return 4 + isDown + (wl == wr ? 0 : 1);
}

/** Behind the last bound no group is found. */
function endBounds(): void {
  v128.store(bounds + (<usize>boundCount << 2), f32x4.splat(-Infinity));
}

/** Groups that are looked at. */
// @ts-ignore: decorator
@inline
export function groupCount(): i32 {
  return boundCount;
}

/** Number, among those looked at, of the group with the highest bound; −1 if none is over `floor`. */
export function likeliestGroup(floor: f64): i32 {
  let most = f32x4.splat(-Infinity);
  for (let n = 0; n < boundCount; n += 4) most = f32x4.pmax(most, fourBounds(n));
  const pair = f32x4.pmax(most, v128.shuffle<i64>(most, most, 1, 0));
  const highest = max<f32>(f32x4.extract_lane(pair, 0), f32x4.extract_lane(pair, 1));
  if (!(<f64>highest > floor)) return -1;
  let likeliest = 0;
  while (boundOf(likeliest) != highest) likeliest++;
  return likeliest;
}

/** Number of the first group from one on whose bound is over `floor`; as many as there are if none. */
export function nextOver(from: i32, floor: f64): i32 {
  const height = f32x4.splat(<f32>(floor - RIPPLE * abs(floor)));
  for (let n = from; n < boundCount; n += 4) {
    const over = i32x4.bitmask(f32x4.gt(fourBounds(n), height));
    if (over != 0) return min<i32>(n + ctz(over), boundCount);
  }
  return boundCount;
}

/** Bounds of four groups; none for those behind the last. */
// @ts-ignore: decorator
@inline
function fourBounds(n: i32): v128 {
  return v128.load(bounds + (<usize>n << 2));
}

/** Bound of one of the groups that are looked at. */
// @ts-ignore: decorator
@inline
function boundOf(n: i32): f32 {
  return load<f32>(bounds + (<usize>n << 2));
}

/** Bounds of u_R over the groups of the bin in hand; f32. */
const outers: usize = memory.data(MOST_GROUPS * 4, 16);
/** Bounds of −u_L over the groups that face them at any delay; f32. */
const inners: usize = memory.data(MOST_GROUPS * 4, 16);
let outerFirst: i32 = 0;
let innerFirst: i32 = 0;

/**
 * Takes the bounds of a bin's groups and of those that face them.
 * @param earliest first frame that may face the first group's
 * @param latest last frame that may face the last group's
 */
export function boundFacing(first: i32, last: i32, earliest: i32, latest: i32): void {
  outerFirst = first;
  for (let group = first; group <= last; group++) {
    store<f32>(outers + (<usize>(group - first) << 2), load<f32>(groupAt(group), 4));
  }
  innerFirst = earliest >> GROUP_SHIFT;
  for (let group = innerFirst; group <= latest >> GROUP_SHIFT; group++) {
    store<f32>(inners + (<usize>(group - innerFirst) << 2), load<f32>(groupAt(group), 8));
  }
}

/** Bounds u_R(t) − u_L(t − delay) over the bin's groups; they are looked at from now on. */
export function boundClosing(first: i32, last: i32, delay: i32): void {
  boundCount = last - first + 1;
  // A peak may lie up to a frame beside the frame it is found at.
  const early = ((first << GROUP_SHIFT) - delay - 1) >> GROUP_SHIFT;
  const late = (((first + 1) << GROUP_SHIFT) - delay + 1) >> GROUP_SHIFT;
  for (let n = 0; n < boundCount; n += 4) {
    const outer = outers + (<usize>(first - outerFirst + n) << 2);
    const inner = inners + (<usize>(early - innerFirst + n) << 2);
    let facing = f32x4.pmax(v128.load(inner), v128.load(inner, 4));
    if (late > early + 1) facing = f32x4.pmax(facing, v128.load(inner, 8));
    v128.store(bounds + (<usize>n << 2), f32x4.add(v128.load(outer), facing));
  }
  endBounds();
}

/** Bound of −u_L over all groups that hold a frame from `first` to `last`, which face the bin. */
export function innerBound(first: i32, last: i32): f64 {
  let most: f32 = -Infinity;
  for (let group = first >> GROUP_SHIFT; group <= last >> GROUP_SHIFT; group++) {
    most = max<f32>(most, load<f32>(inners + (<usize>(group - innerFirst) << 2)));
  }
  return <f64>most;
}

/** Bound of u_R over a group of the bin in hand. */
// @ts-ignore: decorator
@inline
export function outerBound(group: i32): f64 {
  return <f64>load<f32>(outers + (<usize>(group - outerFirst) << 2));
}
