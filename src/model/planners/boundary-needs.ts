import { BINS_PER_QUARTER } from '../../analysis/motion.js';
import type { PlannedSide } from '../planned-side.js';
import { keptLand } from '../required-advance.js';
import { windowMaximum } from './window-maximum.js';

/** Boundaries of a quarter's bins, both its ends included. */
const BOUNDARIES = BINS_PER_QUARTER + 1;

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
  const boundaries = side.approachLoose.length + 1;
  // Behind them is room for what the last quarters held before they were raised.
  const memory = new Float64Array(boundaries + (c + 1) * BOUNDARIES);
  const needs = memory.subarray(0, boundaries);
  setRequired(needs, side, facing, gain);
  if (c > 0) raiseWithin(needs, side.count, c, memory);
  return needs;
}

/** Sets R at each boundary, the larger of its two bins', m; at most pitchMax. */
function setRequired(
  required: Float64Array,
  side: PlannedSide,
  facing: Float64Array,
  gain: number,
): void {
  const { approachLoose, count } = side;
  const { pitchMax } = side.settings;
  const kept = keptLand(side, gain);
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
}

/**
 * Raises each entry to the largest at most c quarters away; a quarter has 16 and the first of the
 * next. Of the two quarters at the ends of the reach those parts count that are near enough; most often
 * another within reach holds more than all of them.
 * @param c over 0
 * @param memory of the row, which goes on behind it for c + 1 quarters
 */
function raiseWithin(row: Float64Array, count: number, c: number, memory: Float64Array): void {
  const ofQuarters = new Float64Array(count);
  for (let quarter = 0; quarter < count; quarter++)
    ofQuarters[quarter] = quarterLargest(row, quarter);
  const heldAt = (quarter: number) => row.length + (quarter % (c + 1)) * BOUNDARIES;
  for (let quarter = 0; quarter <= count; quarter++) {
    const [earliest, latest] = [quarter - c, quarter + c];
    const between = windowMaximum(ofQuarters, earliest + 1, latest - 1);
    const from = quarter * BINS_PER_QUARTER;
    if (quarter < count) memory.copyWithin(heldAt(quarter), from, from + BOUNDARIES);
    row.fill(between, from, from + BINS_PER_QUARTER);
    if (earliest >= 0 && ofQuarters[earliest]! > between) {
      raiseToEnd(row, from, memory, heldAt(earliest));
    }
    if (latest < count && ofQuarters[latest]! > between) raiseToHere(row, from, latest);
  }
}

function quarterLargest(row: Float64Array, quarter: number): number {
  const first = quarter * BINS_PER_QUARTER;
  let most = row[first]!;
  for (let at = first + 1; at <= first + BINS_PER_QUARTER; at++) {
    if (row[at]! > most) most = row[at]!;
  }
  return most;
}

/** Raises a quarter's entries to the largest from their place in an earlier one to its end. */
function raiseToEnd(row: Float64Array, from: number, held: Float64Array, first: number): void {
  let most = held[first + BINS_PER_QUARTER]!;
  for (let at = BINS_PER_QUARTER - 1; at >= 0; at--) {
    if (held[first + at]! > most) most = held[first + at]!;
    if (from + at < row.length && most > row[from + at]!) row[from + at] = most;
  }
}

/** Raises them to the largest from a later quarter's start to their place in it. */
function raiseToHere(row: Float64Array, from: number, quarter: number): void {
  const first = quarter * BINS_PER_QUARTER;
  let most = row[first]!;
  for (let at = 0; at < BINS_PER_QUARTER; at++) {
    if (row[first + at]! > most) most = row[first + at]!;
    if (most > row[from + at]!) row[from + at] = most;
  }
}
