import { GROUP, GROUP_SHIFT, leftDownBounds, rightBounds } from './groups';
import { RIPPLE } from './interpolate';
import { largerFrame } from './vector';

// Lists of bounds of groups, f32 in their order, with as many of −∞ behind them as a vector needs.

/** Most groups of a bin, its dilation and what a turn's slack adds. */
const MOST_GROUPS: i32 = 4096;
const LIST_BYTES: i32 = (MOST_GROUPS + 4) * 4;

/** Bounds of u_R over the groups of the bin in hand. */
export const outers: usize = memory.data(LIST_BYTES, 16);
/** Bounds of −u_L over the groups that face them at any delay. */
const inners: usize = memory.data(LIST_BYTES, 16);
/** Bounds of what is sought. */
export const bounds: usize = memory.data(LIST_BYTES, 16);
let outerFirst: i32 = 0;
let innerFirst: i32 = 0;

/**
 * Takes the bounds of a bin's groups and of those that face them.
 * @param earliest first frame that may face the first group's
 * @param latest last frame that may face the last group's
 */
export function boundFacing(first: i32, last: i32, earliest: i32, latest: i32): void {
  outerFirst = first;
  boundRight(first, last, outers);
  innerFirst = earliest >> GROUP_SHIFT;
  boundLeftDown(innerFirst, latest >> GROUP_SHIFT, inners);
}

/** Takes the bounds of u_R over groups. */
export function boundRight(first: i32, last: i32, list: usize): void {
  for (let n = 0; n <= last - first; n += 4) {
    v128.store(boundAt(list, n), v128.load(rightBounds(first + n)));
  }
  endList(list, last - first + 1);
}

/** The same of −u_L. */
export function boundLeftDown(first: i32, last: i32, list: usize): void {
  for (let n = 0; n <= last - first; n += 4) {
    v128.store(boundAt(list, n), v128.load(leftDownBounds(first + n)));
  }
  endList(list, last - first + 1);
}

/** Bounds u_R(t) − u_L(t − delay) over the bin's groups; `bounds` are of that from now on. */
export function boundClosing(first: i32, last: i32, delay: f64): void {
  const facing = firstFacing(first, delay) - innerFirst;
  const isAligned = lastFacing(first, delay) - innerFirst == facing;
  for (let n = 0; n <= last - first; n += 4) {
    const inner = boundAt(inners, facing + n);
    const early = v128.load(inner);
    const most = isAligned ? early : f32x4.pmax(early, v128.load(inner, 4));
    const outer = v128.load(boundAt(outers, first - outerFirst + n));
    v128.store(boundAt(bounds, n), f32x4.add(outer, most));
  }
  endList(bounds, last - first + 1);
}

/**
 * The first group that faces one at a delay. A peak may lie up to a frame from the frame it is found
 * at; as far beside its frames a group's bound holds, and what faces that is as far beside theirs.
 */
export function firstFacing(group: i32, delay: f64): i32 {
  return ((group << GROUP_SHIFT) - <i32>Math.ceil(delay)) >> GROUP_SHIFT;
}

/** The last such group. */
export function lastFacing(group: i32, delay: f64): i32 {
  return ((group << GROUP_SHIFT) - <i32>Math.floor(delay) + GROUP - 1) >> GROUP_SHIFT;
}

function endList(list: usize, count: i32): void {
  v128.store(boundAt(list, count), f32x4.splat(-Infinity));
}

// @ts-ignore: decorator
@inline
function boundAt(list: usize, n: i32): usize {
  return list + (<usize>n << 2);
}

/** Bound of one of the groups of a list. */
// @ts-ignore: decorator
@inline
export function boundOf(list: usize, n: i32): f64 {
  return <f64>load<f32>(boundAt(list, n));
}

/** Number of the group with the highest bound in a list; −1 if none is over `floor`. */
export function likeliestGroup(list: usize, count: i32, floor: f64): i32 {
  let most = f32x4.splat(-Infinity);
  for (let n = 0; n < count; n += 4) most = f32x4.pmax(most, v128.load(boundAt(list, n)));
  const highest = highestLane(most);
  if (!(<f64>highest > floor)) return -1;
  const sought = f32x4.splat(highest);
  let n = 0;
  let is = 0;
  for (; is == 0; n += 4) is = i32x4.bitmask(f32x4.eq(v128.load(boundAt(list, n)), sought));
  return n - 4 + ctz(is);
}

/** Number of the first group from one on whose bound is over `floor`; `count` if there is none. */
export function nextOver(list: usize, count: i32, from: i32, floor: f64): i32 {
  const height = f32x4.splat(<f32>(floor - RIPPLE * abs(floor)));
  for (let n = from; n < count; n += 4) {
    const over = i32x4.bitmask(f32x4.gt(v128.load(boundAt(list, n)), height));
    if (over != 0) return min<i32>(n + ctz(over), count);
  }
  return count;
}

/** Bound of −u_L over all groups that hold a frame from `first` to `last`, which face the bin. */
export function innerBound(first: i32, last: i32): f64 {
  const from = boundAt(inners, (first >> GROUP_SHIFT) - innerFirst);
  const until = boundAt(inners, (last >> GROUP_SHIFT) - innerFirst) + 4;
  let most = f32x4.splat(-Infinity);
  let at = from;
  for (; at + 16 <= until; at += 16) most = f32x4.pmax(most, v128.load(at));
  for (; at < until; at += 4) most = f32x4.pmax(most, v128.load32_splat(at));
  return <f64>highestLane(most);
}

// @ts-ignore: decorator
@inline
function highestLane(lanes: v128): f32 {
  const pair = largerFrame(lanes);
  return max<f32>(f32x4.extract_lane(pair, 0), f32x4.extract_lane(pair, 1));
}
