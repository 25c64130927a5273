import { BINS_PER_QUARTER } from '../../analysis/motion.js';
import type { PlannedSide } from '../planned-side.js';
import { keptLand } from '../required-advance.js';
import { windowMaximum } from './window-maximum.js';

/**
 * The advance needed at each boundary of a bin so that landMin is kept by a plan that is executed
 * up to c quarters early or late, c being `timingTolerance`: the largest R(t) over the times at
 * most c quarters away. R is linear inside a bin, and a boundary belongs to both its bins. No plan
 * can meet more than pitchMax, so more is not asked for: what is left is met as nearly as can be.
 * @param facing h(t) + h(t − T) at the quarters' ends, m
 * @returns m, one more than there are bins
 */
export function boundaryNeeds(side: PlannedSide, facing: Float64Array, gain: number): Float64Array {
  const c = side.settings.timingTolerance;
  const required = requiredAtBoundaries(side, facing, gain);
  return c === 0 ? required : largestWithin(required, side.count, c);
}

/** R at each boundary, the larger of its two bins', m; at most pitchMax. */
function requiredAtBoundaries(side: PlannedSide, facing: Float64Array, gain: number): Float64Array {
  const { approachLoose, count } = side;
  const { pitchMax } = side.settings;
  const kept = keptLand(side, gain);
  const required = new Float64Array(approachLoose.length + 1);
  let before = Number.NEGATIVE_INFINITY;
  for (let quarter = 0; quarter < count; quarter++) {
    const opening = facing[quarter]!;
    const step = (facing[quarter + 1]! - opening) / BINS_PER_QUARTER;
    const still = kept[quarter]! + opening;
    const first = quarter * BINS_PER_QUARTER;
    for (let at = 0; at < BINS_PER_QUARTER; at++) {
      const need = gain * approachLoose[first + at]! + still + step * at;
      required[first + at] = Math.min(Math.max(before, need), pitchMax);
      before = need + step;
    }
  }
  required[approachLoose.length] = Math.min(before, pitchMax);
  return required;
}

/**
 * The largest entry at most c quarters away from each; a quarter has 16 and the first of the next.
 * Of the two quarters at the ends of the reach those parts count that are near enough; most often
 * another within reach holds more than all of them.
 * @param c over 0
 */
function largestWithin(row: Float64Array, count: number, c: number): Float64Array {
  const ofQuarters = new Float64Array(count);
  for (let quarter = 0; quarter < count; quarter++)
    ofQuarters[quarter] = quarterLargest(row, quarter);
  const largest = new Float64Array(row.length);
  for (let quarter = 0; quarter <= count; quarter++) {
    const [earliest, latest] = [quarter - c, quarter + c];
    const between = windowMaximum(ofQuarters, earliest + 1, latest - 1);
    const from = quarter * BINS_PER_QUARTER;
    largest.fill(between, from, from + BINS_PER_QUARTER);
    if (earliest >= 0 && ofQuarters[earliest]! > between) raiseToEnd(largest, from, row, earliest);
    if (latest < count && ofQuarters[latest]! > between) raiseToHere(largest, from, row, latest);
  }
  return largest;
}

function quarterLargest(row: Float64Array, quarter: number): number {
  const first = quarter * BINS_PER_QUARTER;
  let most = row[first]!;
  for (let at = first + 1; at <= first + BINS_PER_QUARTER; at++) {
    if (row[at]! > most) most = row[at]!;
  }
  return most;
}

/** Raises a quarter's entries to the largest from their place in another quarter to its end. */
function raiseToEnd(largest: Float64Array, from: number, row: Float64Array, quarter: number): void {
  const first = quarter * BINS_PER_QUARTER;
  let most = row[first + BINS_PER_QUARTER]!;
  for (let at = BINS_PER_QUARTER - 1; at >= 0; at--) {
    if (row[first + at]! > most) most = row[first + at]!;
    if (from + at < largest.length && most > largest[from + at]!) largest[from + at] = most;
  }
}

/** Raises them to the largest from that quarter's start to their place in it. */
function raiseToHere(
  largest: Float64Array,
  from: number,
  row: Float64Array,
  quarter: number,
): void {
  const first = quarter * BINS_PER_QUARTER;
  let most = row[first]!;
  for (let at = 0; at < BINS_PER_QUARTER; at++) {
    if (row[first + at]! > most) most = row[first + at]!;
    if (most > largest[from + at]!) largest[from + at] = most;
  }
}
