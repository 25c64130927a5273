import { bounds, boundLeftDown, boundOf, boundRight, likeliestGroup, nextOver } from './bounds';
import { GROUP_SHIFT, leftRise, rightRise } from './groups';
import { framesOver, isWithin, takeWalls } from './heights';
import {
  isLocalMaximum, lookAtRing, peakNear, peakPlace, riseAt, signalAt, valueAt,
} from './interpolate';
import { displacement, displacementMask } from './rings';

/** Maximum of weight·u_R between two places, or `floor` where that is higher. */
export function seekRight(from: f64, until: f64, weight: f64, floor: f64): f64 {
  boundRight(firstGroup(from), lastGroup(until), bounds);
  return seekWall(from, until, 0, 1, weight, floor);
}

/** Maximum of −weight·u_L between two places, or `floor` where that is higher. */
export function seekLeftDown(from: f64, until: f64, weight: f64, floor: f64): f64 {
  boundLeftDown(firstGroup(from), lastGroup(until), bounds);
  return seekWall(from, until, -1, 0, weight, floor);
}

/** The group that a span begins in. */
// @ts-ignore: decorator
@inline
export function firstGroup(from: f64): i32 {
  return <i32>Math.floor(from) >> GROUP_SHIFT;
}

/** The group that it ends in. */
// @ts-ignore: decorator
@inline
export function lastGroup(until: f64): i32 {
  return <i32>Math.ceil(until) >> GROUP_SHIFT;
}

/** The likeliest group first, then those whose bound is still higher than what was found. */
function seekWall(from: f64, until: f64, left: f32, right: f32, weight: f64, floor: f64): f64 {
  const first = firstGroup(from);
  const count = lastGroup(until) - first + 1;
  const likeliest = likeliestGroup(bounds, count, floor / weight);
  if (likeliest < 0) return floor;
  let best = climbWalls(first + likeliest, left, right, weight, from, until, floor);
  for (let n = nextOver(bounds, count, 0, best / weight); n < count; ) {
    if (n != likeliest) best = climbWalls(first + n, left, right, weight, from, until, best);
    n = nextOver(bounds, count, n + 1, best / weight);
  }
  const wl = weight * <f64>left;
  const wr = weight * <f64>right;
  if (weight * boundOf(bounds, 0) > best) best = max<f64>(best, wallAt(from, wl, wr));
  if (weight * boundOf(bounds, count - 1) > best) best = max<f64>(best, wallAt(until, wl, wr));
  return best;
}

/** u of one wall at a place. */
export function wallAt(place: f64, wl: f64, wr: f64): f64 {
  lookAtRing(displacement, displacementMask, wl, wr, <i32>Math.floor(place), 2);
  return valueAt(place);
}

/** Raises `best` by weight·(left·u_L + right·u_R) of a group, left and right 0 or ±1. */
export function climbWalls(
  group: i32, left: f32, right: f32, weight: f64, from: f64, until: f64, best: f64,
): f64 {
  const highest = takeWalls(group, left, right);
  const found = best / weight;
  const height = isWithin(group, from, until) ? max<f64>(found, highest) : found;
  const rise = abs(left) * leftRise(group) + abs(right) * rightRise(group);
  const frames = framesOver(group, from, until, height, <f64>rise);
  if (frames == 0) return best;
  const first = (group << GROUP_SHIFT) + ctz(frames);
  const wl = weight * <f64>left;
  lookAtRing(displacement, displacementMask, wl, weight * <f64>right, first, spanOf(frames));
  return climbFrames(group, frames, from, until, best);
}

/** From the first to the last frame of some that are chosen. */
// @ts-ignore: decorator
@inline
export function spanOf(frames: u32): i32 {
  return 32 - clz(frames) - ctz(frames);
}

/** Raises `best` by chosen frames of a group that are looked at, and by their peaks between two places. */
export function climbFrames(group: i32, frames: u32, from: f64, until: f64, best: f64): f64 {
  const start = group << GROUP_SHIFT;
  let largest = best;
  // The frames alone first: then hardly one is left whose peak may be higher.
  for (let left = frames; left != 0; left &= left - 1) {
    const n = start + ctz(left);
    if (<f64>n >= from && <f64>n <= until) largest = max<f64>(largest, signalAt(n));
  }
  for (let left = frames; left != 0; left &= left - 1) {
    largest = climb(start + ctz(left), from, until, largest);
  }
  return largest;
}

/** Raises `best` by the peak next to a frame. */
function climb(n: i32, from: f64, until: f64, best: f64): f64 {
  if (!isLocalMaximum(n) || !(signalAt(n) + riseAt(n) > best)) return best;
  const peak = peakNear(n);
  return peakPlace >= from && peakPlace <= until ? max<f64>(best, peak) : best;
}
