import { GROUP_SHIFT, groupBound } from './groups';
import { lookAtRing, peakNear, rise, signalAt, valueAt } from './interpolate';
import { displacement, displacementMask } from './rings';

/**
 * Maximum of wl·u_L + wr·u_R between two places: the likeliest group first, then those whose bound
 * is still higher than what was found.
 */
export function seek(from: f64, until: f64, wl: f64, wr: f64): f64 {
  lookAtRing(displacement, displacementMask, wl, wr);
  const first = <i32>Math.ceil(from);
  const end = <i32>Math.ceil(until);
  let largest = max<f64>(valueAt(from), valueAt(until));
  const lastGroup = (end - 1) >> GROUP_SHIFT;
  let likeliest = -1;
  let most = largest;
  for (let group = first >> GROUP_SHIFT; group <= lastGroup; group++) {
    const bound = groupBound(group, wl, wr);
    if (bound > most) {
      most = bound;
      likeliest = group;
    }
  }
  if (likeliest < 0) return largest;
  largest = climbGroup(likeliest, first, end, largest);
  for (let group = first >> GROUP_SHIFT; group <= lastGroup; group++) {
    if (groupBound(group, wl, wr) > largest) largest = climbGroup(group, first, end, largest);
  }
  return largest;
}

/** Raises `best` by the frames of a group between `first` and `end`, of what is looked at. */
export function climbGroup(group: i32, first: i32, end: i32, best: f64): f64 {
  const from = max<i32>(first, group << GROUP_SHIFT);
  const until = min<i32>(end, (group + 1) << GROUP_SHIFT);
  let largest = best;
  let before = signalAt(from - 1);
  let at = signalAt(from);
  for (let n = from; n < until; n++) {
    const after = signalAt(n + 1);
    if (at >= before && at > after) {
      if (at + rise(before, at, after) > largest) largest = max<f64>(largest, peakNear(n));
    } else if (at > largest) {
      largest = at;
    }
    before = at;
    at = after;
  }
  return largest;
}
