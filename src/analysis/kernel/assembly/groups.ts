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

/** Bounds of u_L, u_R, −u_L, −u_R, then of the sum, the difference and −both: a ring of f32 for each. */
const KINDS: i32 = 8;
const RIGHT: i32 = 1;
const LEFT_DOWN: i32 = 2;
/** Groups of a ring's start that stand once more behind its end, so that four are one load. */
const MIRRORED: i32 = 4;
let rings: usize = 0;
let ringBytes: usize = 0;
let mask: i32 = 0;

export function reserveGroups(frames: i32): void {
  const count = frames >> GROUP_SHIFT;
  mask = count - 1;
  ringBytes = <usize>(count + MIRRORED) << 2;
  rings = heap.alloc(<usize>KINDS * ringBytes);
  memory.fill(rings, 0, <usize>KINDS * ringBytes);
}

/** Address of a group's bound of a kind, which three others stand behind. */
// @ts-ignore: decorator
@inline
function groupAt(group: i32, kind: i32): usize {
  return rings + <usize>kind * ringBytes + (<usize>(group & mask) << 2);
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
  const group = first >> GROUP_SHIFT;
  // Twice the ripple: the curvature of frames that are rounded is off by less than that.
  const ripples = f32x4.mul(f32x4.splat(<f32>(2 * RIPPLE)), f32x4.abs(walls));
  const rises = f32x4.add(
    f32x4.pmax(ripples, v128.shuffle<i64>(ripples, ripples, 1, 0)),
    f32x4.mul(f32x4.splat(<f32>PEAK_SHARE), largerFrame(curvature)));
  // Where both add up, so may what they rise by.
  const both = f32x4.add(rises, v128.shuffle<i32>(rises, rises, 1, 0, 3, 2));
  put(groupAt(group, 0), f32x4.add(walls, rises), f32x4.add(sums, both));
  const beyond = <usize>(mask + 1) << 2;
  if ((group & mask) < MIRRORED) {
    put(groupAt(group, 0) + beyond, f32x4.add(walls, rises), f32x4.add(sums, both));
  }
}

function put(at: usize, walls: v128, sums: v128): void {
  v128.store32_lane(at, walls, 0);
  v128.store32_lane(at + ringBytes, walls, 1);
  v128.store32_lane(at + 2 * ringBytes, walls, 2);
  v128.store32_lane(at + 3 * ringBytes, walls, 3);
  const further = at + 4 * ringBytes;
  v128.store32_lane(further, sums, 0);
  v128.store32_lane(further + ringBytes, sums, 1);
  v128.store32_lane(further + 2 * ringBytes, sums, 2);
  v128.store32_lane(further + 3 * ringBytes, sums, 3);
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
  const kind = boundKind(wl, wr);
  const weight = f32x4.splat(<f32>max<f64>(abs(wl), abs(wr)));
  for (let n = 0; n < boundCount; n += 4) {
    const four = v128.load(groupAt(first + n, kind));
    v128.store(bounds + (<usize>n << 2), f32x4.mul(weight, four));
  }
  endBounds();
}

/** Which of a group's eight bounds is that of a sum of the walls with such weights. */
function boundKind(wl: f64, wr: f64): i32 {
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
  let n = 0;
  let is = 0;
  for (; is == 0; n += 4) is = i32x4.bitmask(f32x4.eq(fourBounds(n), f32x4.splat(highest)));
  return n - 4 + ctz(is);
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
export function boundOf(n: i32): f64 {
  return <f64>load<f32>(bounds + (<usize>n << 2));
}

/** Bounds of u_R over the groups of the bin in hand; f32. */
const outers: usize = memory.data((MOST_GROUPS + 4) * 4, 16);
/** Bounds of −u_L over the groups that face them at any delay; f32. */
const inners: usize = memory.data((MOST_GROUPS + 4) * 4, 16);
let outerFirst: i32 = 0;
let innerFirst: i32 = 0;

/**
 * Takes the bounds of a bin's groups and of those that face them.
 * @param earliest first frame that may face the first group's
 * @param latest last frame that may face the last group's
 */
export function boundFacing(first: i32, last: i32, earliest: i32, latest: i32): void {
  outerFirst = first;
  takeBounds(RIGHT, first, last, outers);
  innerFirst = earliest >> GROUP_SHIFT;
  takeBounds(LEFT_DOWN, innerFirst, latest >> GROUP_SHIFT, inners);
}

/** Takes some groups' bounds of a kind, and perhaps three more. */
function takeBounds(kind: i32, first: i32, last: i32, out: usize): void {
  for (let group = first; group <= last; group += 4) {
    v128.store(out + (<usize>(group - first) << 2), v128.load(groupAt(group, kind)));
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
  const from = inners + (<usize>((first >> GROUP_SHIFT) - innerFirst) << 2);
  const until = inners + (<usize>((last >> GROUP_SHIFT) - innerFirst) << 2) + 4;
  let most = f32x4.splat(-Infinity);
  let at = from;
  for (; at + 16 <= until; at += 16) most = f32x4.pmax(most, v128.load(at));
  for (; at < until; at += 4) most = f32x4.pmax(most, v128.load32_splat(at));
  const pair = largerFrame(most);
  return <f64>max<f32>(f32x4.extract_lane(pair, 0), f32x4.extract_lane(pair, 1));
}

/** Bound of u_R over a group of the bin in hand. */
// @ts-ignore: decorator
@inline
export function outerBound(group: i32): f64 {
  return <f64>load<f32>(outers + (<usize>(group - outerFirst) << 2));
}
