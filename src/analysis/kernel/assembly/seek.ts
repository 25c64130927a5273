import { GROUP, GROUP_SHIFT, groupBound } from './groups';
import { isLocalMaximum, lookAtRing, peakNear, peakPlace, rise, signalAt, valueAt } from './interpolate';
import { displacement, displacementMask } from './rings';

/**
 * Maximum of wl·u_L + wr·u_R between two places: the likeliest group first, then those whose bound
 * is still higher than what was found.
 * @param floor what is found is at least that
 */
export function seek(from: f64, until: f64, wl: f64, wr: f64, floor: f64): f64 {
  const firstGroup = <i32>Math.floor(from) >> GROUP_SHIFT;
  const lastGroup = <i32>Math.ceil(until) >> GROUP_SHIFT;
  let largest = max<f64>(floor, max<f64>(wallAt(from, wl, wr), wallAt(until, wl, wr)));
  let likeliest = -1;
  let most = largest;
  for (let group = firstGroup; group <= lastGroup; group++) {
    const bound = groupBound(group, wl, wr);
    if (bound > most) {
      most = bound;
      likeliest = group;
    }
  }
  if (likeliest < 0) return largest;
  largest = climbWalls(likeliest, wl, wr, from, until, largest);
  for (let group = firstGroup; group <= lastGroup; group++) {
    if (!(groupBound(group, wl, wr) > largest)) continue;
    if (group != likeliest) largest = climbWalls(group, wl, wr, from, until, largest);
  }
  return largest;
}

/** wl·u_L + wr·u_R at a place. */
export function wallAt(place: f64, wl: f64, wr: f64): f64 {
  lookAtRing(displacement, displacementMask, wl, wr, <i32>Math.floor(place), 2);
  return valueAt(place);
}

function climbWalls(group: i32, wl: f64, wr: f64, from: f64, until: f64, best: f64): f64 {
  lookAtRing(displacement, displacementMask, wl, wr, group << GROUP_SHIFT, GROUP);
  return climbGroup(group, from, until, best);
}

/** Raises `best` by the frames and peaks of a group between two places, of what is looked at. */
export function climbGroup(group: i32, from: f64, until: f64, best: f64): f64 {
  const first = max<i32>(<i32>Math.floor(from), group << GROUP_SHIFT);
  const end = min<i32>(<i32>Math.ceil(until) + 1, (group + 1) << GROUP_SHIFT);
  let largest = best;
  for (let n = first; n < end; n++) {
    const at = signalAt(n);
    if (at > largest && <f64>n >= from && <f64>n <= until) largest = at;
    if (!isLocalMaximum(n)) continue;
    if (at + rise(signalAt(n - 1), at, signalAt(n + 1)) > largest) {
      const peak = peakNear(n);
      if (peak > largest && peakPlace >= from && peakPlace <= until) largest = peak;
    }
  }
  return largest;
}
