import { BINS_PER_QUARTER } from '../../analysis/motion.js';
import type { PlannedSide } from '../planned-side.js';
import { keptLand } from '../required-advance.js';

/**
 * The advance needed at each boundary of a bin so that landMin is kept by a plan that is executed
 * up to c quarters early or late, c being `timingTolerance`: the largest R(t) over the times at
 * most c quarters away. R is linear inside a bin, and a boundary belongs to both its bins. No plan
 * can meet more than pitchMax, so more is not asked for: what is left is met as nearly as can be.
 * @param facing h(t) + h(t − T) at the quarters' ends, m
 * @returns m, one more than there are bins
 */
export function boundaryNeeds(side: PlannedSide, facing: Float64Array, gain: number): Float64Array {
  const { pitchMax, timingTolerance } = side.settings;
  const [atStart, atEnd] = requiredInBins(side, facing, gain);
  const reach = timingTolerance * BINS_PER_QUARTER;
  const needs = slidingMaximum(atStart, atEnd, reach);
  for (let boundary = 0; boundary < needs.length; boundary++) {
    // The two bins that only touch the window count with the end that does.
    const before = atEnd[boundary - reach - 1] ?? Number.NEGATIVE_INFINITY;
    const after = atStart[boundary + reach] ?? Number.NEGATIVE_INFINITY;
    needs[boundary] = Math.min(Math.max(before, needs[boundary]!, after), pitchMax);
  }
  return needs;
}

/** R at the start and at the end of each bin, m. */
function requiredInBins(
  side: PlannedSide,
  facing: Float64Array,
  gain: number,
): [start: Float64Array, end: Float64Array] {
  const kept = keptLand(side, gain);
  const start = new Float64Array(side.approachLoose.length);
  const end = new Float64Array(side.approachLoose.length);
  for (let quarter = 0; quarter < side.count; quarter++) {
    const opening = facing[quarter]!;
    const step = (facing[quarter + 1]! - opening) / BINS_PER_QUARTER;
    for (let at = 0; at < BINS_PER_QUARTER; at++) {
      const bin = quarter * BINS_PER_QUARTER + at;
      const need = gain * side.approachLoose[bin]! + kept[quarter]! + opening;
      start[bin] = need + step * at;
      end[bin] = need + step * (at + 1);
    }
  }
  return [start, end];
}

/**
 * Largest entry of both rows within `reach` of each boundary between entries: over
 * n − reach … n + reach − 1 for boundary n. −Infinity where no entry lies there.
 * @returns one more than a row has
 */
function slidingMaximum(one: Float64Array, other: Float64Array, reach: number): Float64Array {
  const largest = new Float64Array(one.length + 1);
  const entry = (at: number) => Math.max(one[at]!, other[at]!);
  // Places whose entries fall from the front on: the front is the largest in the window.
  const falling = new Int32Array(one.length);
  let [front, back, next] = [0, 0, 0];
  for (let boundary = 0; boundary <= one.length; boundary++) {
    for (; next < Math.min(boundary + reach, one.length); next++) {
      while (back > front && entry(falling[back - 1]!) <= entry(next)) back -= 1;
      falling[back] = next;
      back += 1;
    }
    while (front < back && falling[front]! < boundary - reach) front += 1;
    largest[boundary] = front < back ? entry(falling[front]!) : Number.NEGATIVE_INFINITY;
  }
  return largest;
}
