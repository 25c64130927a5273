import {
  boundOf, boundWalls, GROUP, GROUP_SHIFT, groupCount, likeliestGroup, nextOver,
} from './groups';
import {
  eitherOver, isLocalMaximum, largestAt, lookAtRing, mayRise, peakNear, peakPlace, riseAt, signalAt, valueAt,
} from './interpolate';
import { displacement, displacementMask } from './rings';

/**
 * Maximum of wl·u_L + wr·u_R between two places: the likeliest group first, then those whose bound
 * is still higher than what was found.
 * @param floor what is found is at least that; the values at both places among it
 */
export function seek(from: f64, until: f64, wl: f64, wr: f64, floor: f64): f64 {
  const first = <i32>Math.floor(from) >> GROUP_SHIFT;
  boundWalls(first, <i32>Math.ceil(until) >> GROUP_SHIFT, wl, wr);
  const likeliest = likeliestGroup(floor);
  if (likeliest < 0) return floor;
  let largest = climbWalls(first, likeliest, wl, wr, from, until, floor);
  const groups = groupCount();
  for (let n = nextOver(0, largest); n < groups; n = nextOver(n + 1, largest)) {
    if (n != likeliest) largest = climbWalls(first, n, wl, wr, from, until, largest);
  }
  return largest;
}

/** u of one wall at a place. */
export function wallAt(place: f64, wl: f64, wr: f64): f64 {
  lookAtRing(displacement, displacementMask, wl, wr, <i32>Math.floor(place), 2);
  return valueAt(place);
}

/** Raises `best` by a group, the `n`th from the first. */
function climbWalls(
  first: i32, n: i32, wl: f64, wr: f64, from: f64, until: f64, best: f64,
): f64 {
  const group = first + n;
  lookAtRing(displacement, displacementMask, wl, wr, group << GROUP_SHIFT, GROUP);
  return climbGroup(group, boundOf(n), from, until, best);
}

/**
 * Raises `best` by the frames and peaks of a group between two places, of what is looked at.
 * @param bound of the group: no peak rises more above its frame than that above the highest
 */
export function climbGroup(group: i32, bound: f64, from: f64, until: f64, best: f64): f64 {
  const first = max<i32>(<i32>Math.floor(from), group << GROUP_SHIFT);
  const end = min<i32>(<i32>Math.ceil(until) + 1, (group + 1) << GROUP_SHIFT);
  // The frames alone first: then hardly one is left whose peak may be higher.
  const firstWithin = max<i32>(first, <i32>Math.ceil(from));
  const lastWithin = min<i32>(end - 1, <i32>Math.floor(until));
  let largest = max<f64>(best, largestAt(firstWithin, lastWithin));
  const highest = largestAt(group << GROUP_SHIFT, ((group + 1) << GROUP_SHIFT) - 1);
  const least = largest - (bound - highest);
  for (let n = first; n < end; n += 2) {
    if (!eitherOver(n, least)) continue;
    const mayBe = mayRise(n, largest);
    if (mayBe == 0) continue;
    if ((mayBe & 1) != 0) largest = climb(n, from, until, largest);
    if ((mayBe & 2) != 0 && n + 1 < end) largest = climb(n + 1, from, until, largest);
  }
  return largest;
}

/** Raises `best` by the peak next to a frame. */
function climb(n: i32, from: f64, until: f64, best: f64): f64 {
  if (!isLocalMaximum(n) || !(signalAt(n) + riseAt(n) > best)) return best;
  const peak = peakNear(n);
  return peakPlace >= from && peakPlace <= until ? max<f64>(best, peak) : best;
}
