import { sumBounds } from './groups';
import { RIPPLE } from './interpolate';
import { climbWalls, firstGroup, lastGroup, wallAt } from './seek';
import { pairOf } from './vector';

// The sums of the walls that a bin is measured by are sought in one walk over its groups: in lane
// 0 outwards, 1 lift, 2 inwards, 3 sink, where 0 and 2 are both lateral.

/** Lanes that are not 2, or not 0. */
const OUT: i32 = 0b1011;
const IN: i32 = 0b1110;
const HALF_ROOT: f64 = Math.SQRT1_2;
/** Most fours of groups of a bin. */
const MOST_FOURS: i32 = 1024;

/** The highest bounds of each four groups. */
const fours: usize = memory.data(MOST_FOURS * 16, 16);
/** What was found, by lane; both of lateral are in lane 0. */
const found: usize = memory.data(4 * 8, 16);
let from: f64 = 0;
let until: f64 = 0;

/**
 * Maxima between two places of lift, sink and lateral: in the likeliest group of each first, then in
 * those whose bound is still higher.
 */
export function seekSums(start: f64, end: f64): void {
  from = start;
  until = end;
  v128.store(found, f64x2.splat(-Infinity));
  v128.store(found, f64x2.splat(-Infinity), 16);
  const first = firstGroup(from);
  const last = lastGroup(until);
  const most = takeFours(first, last);
  const isOut = f32x4.extract_lane(most, 0) >= f32x4.extract_lane(most, 2);
  climbOthers(first, last, climbLikeliest(first, last, most, isOut ? OUT : IN));
  raiseAtEnd(from, first);
  raiseAtEnd(until, last);
}

// @ts-ignore: decorator
@inline
export function liftFound(): f64 {
  return load<f64>(found, 8);
}

// @ts-ignore: decorator
@inline
export function sinkFound(): f64 {
  return load<f64>(found, 24);
}

// @ts-ignore: decorator
@inline
export function lateralFound(): f64 {
  return load<f64>(found);
}

/** Takes the highest bounds of each four groups; gives the highest of all. */
function takeFours(first: i32, last: i32): v128 {
  let most = f32x4.splat(-Infinity);
  for (let group = first, at = fours; group <= last; group += 4, at += 16) {
    const early = f32x4.pmax(sumBounds(group), sumBounds(min<i32>(group + 1, last)));
    const late = f32x4.pmax(
      sumBounds(min<i32>(group + 2, last)), sumBounds(min<i32>(group + 3, last)));
    const four = f32x4.pmax(early, late);
    v128.store(at, four);
    most = f32x4.pmax(most, four);
  }
  return most;
}

/** Climbs the first group whose bound is the highest of a lane; gives its number by lane. */
function climbLikeliest(first: i32, last: i32, most: v128, likely: i32): v128 {
  let likeliest = i32x4.splat(-1);
  let pending = likely;
  for (let group = first, at = fours; pending != 0 && group <= last; group += 4, at += 16) {
    if ((i32x4.bitmask(f32x4.eq(v128.load(at), most)) & pending) == 0) continue;
    for (let n = group; n <= min<i32>(group + 3, last); n++) {
      const is = f32x4.eq(sumBounds(n), most);
      const here = i32x4.bitmask(is) & pending;
      if (here == 0) continue;
      climbLanes(n, here);
      pending &= ~here;
      likeliest = v128.bitselect(i32x4.splat(n), likeliest, lanesOf(here));
    }
  }
  return likeliest;
}

/** A mask of the lanes whose bits are set. */
// @ts-ignore: decorator
@inline
function lanesOf(bits: i32): v128 {
  const each = i32x4(1, 2, 4, 8);
  return i32x4.eq(v128.and(i32x4.splat(bits), each), each);
}

/** Climbs the groups that may still hold more; not those that were the likeliest. */
function climbOthers(first: i32, last: i32, likeliest: v128): void {
  let floors = floorsOfFound();
  for (let group = first, at = fours; group <= last; group += 4, at += 16) {
    if (!v128.any_true(f32x4.gt(v128.load(at), floors))) continue;
    for (let n = group; n <= min<i32>(group + 3, last); n++) {
      const isDone = i32x4.eq(likeliest, i32x4.splat(n));
      const over = i32x4.bitmask(v128.andnot(f32x4.gt(sumBounds(n), floors), isDone));
      if (over == 0) continue;
      climbLanes(n, over);
      floors = floorsOfFound();
    }
  }
}

function climbLanes(group: i32, lanes: i32): void {
  if ((lanes & 1) != 0) climbLane(group, 1, 1, found);
  if ((lanes & 2) != 0) climbLane(group, 1, -1, found + 8);
  if ((lanes & 4) != 0) climbLane(group, -1, -1, found);
  if ((lanes & 8) != 0) climbLane(group, -1, 1, found + 24);
}

function climbLane(group: i32, left: f32, right: f32, best: usize): void {
  store<f64>(best, climbWalls(group, left, right, HALF_ROOT, from, until, load<f64>(best)));
}

/** What a bound must exceed, by lane. */
function floorsOfFound(): v128 {
  const lateral = f64x2.splat(lateralFound());
  const early = v128.shuffle<i64>(lateral, v128.load(found), 0, 3);
  const late = v128.shuffle<i64>(lateral, v128.load(found, 16), 0, 3);
  return pairOf(lowered(early), lowered(late));
}

// @ts-ignore: decorator
@inline
function lowered(heights: v128): v128 {
  const sums = f64x2.mul(heights, f64x2.splat(Math.SQRT2));
  return f64x2.sub(sums, f64x2.mul(f64x2.splat(RIPPLE), f64x2.abs(sums)));
}

/** Raises what was found by an end of the span, which lies in a group or next to it. */
function raiseAtEnd(place: f64, group: i32): void {
  if (!v128.any_true(f32x4.gt(sumBounds(group), floorsOfFound()))) return;
  const left = wallAt(place, 1, 0);
  const right = wallAt(place, 0, 1);
  store<f64>(found, max<f64>(lateralFound(), HALF_ROOT * abs(left + right)));
  store<f64>(found, max<f64>(liftFound(), HALF_ROOT * (left - right)), 8);
  store<f64>(found, max<f64>(sinkFound(), HALF_ROOT * (right - left)), 24);
}
