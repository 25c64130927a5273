import { GROUP_SHIFT, groupBound } from './groups';
import {
  lookAtRing, peakNear, peakPlace, rise, runFrom, runStep, runValue, valueAt,
} from './interpolate';
import { displacement, displacementMask } from './rings';

/**
 * Maximum of wl·u_L + wr·u_R between two places: the likeliest group first, then those whose bound
 * is still higher than what was found.
 * @param floor what is found is at least that
 */
export function seek(from: f64, until: f64, wl: f64, wr: f64, floor: f64): f64 {
  lookAtRing(displacement, displacementMask, wl, wr);
  const firstGroup = <i32>Math.floor(from) >> GROUP_SHIFT;
  const lastGroup = <i32>Math.ceil(until) >> GROUP_SHIFT;
  let largest = max<f64>(floor, max<f64>(valueAt(from), valueAt(until)));
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
  largest = climbGroup(likeliest, from, until, largest);
  for (let group = firstGroup; group <= lastGroup; group++) {
    if (groupBound(group, wl, wr) > largest) largest = climbGroup(group, from, until, largest);
  }
  return largest;
}

/** Raises `best` by the frames and peaks of a group between two places, of what is looked at. */
export function climbGroup(group: i32, from: f64, until: f64, best: f64): f64 {
  const first = max<i32>(<i32>Math.floor(from), group << GROUP_SHIFT);
  const end = min<i32>(<i32>Math.ceil(until) + 1, (group + 1) << GROUP_SHIFT);
  let largest = best;
  const step = runStep();
  let address = runFrom(first - 1);
  let before = runValue(address);
  let at = runValue(address + step);
  address += 2 * step;
  for (let n = first; n < end; n++) {
    const after = runValue(address);
    address += step;
    const isInside = <f64>n >= from && <f64>n <= until;
    if (at > largest && isInside) largest = at;
    if (at >= before && at > after && at + rise(before, at, after) > largest) {
      const peak = peakNear(n);
      if (peak > largest && peakPlace >= from && peakPlace <= until) largest = peak;
    }
    before = at;
    at = after;
  }
  return largest;
}
