import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../../analysis/motion.js';
import { windowMinimum } from './window-maximum.js';

/** The needs of a side that can bind. */
export interface BindingNeeds {
  /** Boundaries of bins at which they are, ascending. */
  readonly boundaries: readonly number[];
  /** The largest of each quarter, m; base pitch where it meets all of them. */
  readonly largest: Float64Array;
}

/**
 * The needs that can bind, from the second planned turn on. What base pitch meets drops out. A is
 * linear inside a quarter, so it meets the needs of a quarter's boundaries if it meets those on
 * their upper hull. A quarter's last boundary is the next one's first.
 * @param needs A that is needed at each boundary of a bin, m
 * @param basePitch per quarter, m per turn
 */
export function bindingNeeds(needs: Float64Array, basePitch: Float64Array): BindingNeeds {
  const boundaries: number[] = [];
  const largest = Float64Array.from(basePitch);
  const hull = new Int32Array(BINS_PER_QUARTER + 1);
  const last = basePitch.length - 1;
  for (let quarter = QUARTERS_PER_TURN; quarter <= last; quarter++) {
    // All five that may be part of the advance hold at least this.
    const met = windowMinimum(basePitch, quarter - QUARTERS_PER_TURN, quarter);
    const from = quarter * BINS_PER_QUARTER;
    const most = largestWithin(needs, from);
    if (most <= met) continue;
    largest[quarter] = most;
    const corners = setUpperHull(hull, needs, from);
    for (let at = 0; at < corners; at++) {
      const boundary = hull[at]!;
      const isNextOnes = boundary === from + BINS_PER_QUARTER && quarter < last;
      if (!isNextOnes && needs[boundary]! > met) boundaries.push(boundary);
    }
  }
  return { boundaries, largest };
}

/** Largest of a quarter's boundaries, both its ends included. */
function largestWithin(needs: Float64Array, first: number): number {
  let most = needs[first]!;
  for (let at = first + 1; at <= first + BINS_PER_QUARTER; at++) {
    if (needs[at]! > most) most = needs[at]!;
  }
  return most;
}

/**
 * Sets `hull` to the places of the upper hull of a quarter's boundaries, both its ends among them.
 * Source: Andrew's monotone chain, 1979 (from memory).
 * @returns how many there are
 */
function setUpperHull(hull: Int32Array, needs: Float64Array, first: number): number {
  let corners = 0;
  for (let at = first; at <= first + BINS_PER_QUARTER; at++) {
    while (corners > 1 && isUnder(needs, hull[corners - 1]!, hull[corners - 2]!, at)) corners -= 1;
    hull[corners] = at;
    corners += 1;
  }
  return corners;
}

/** Whether `between` lies on or under the line from `before` to `after`. */
function isUnder(row: Float64Array, between: number, before: number, after: number): boolean {
  const rise = (row[after]! - row[before]!) * (between - before);
  return (row[between]! - row[before]!) * (after - before) <= rise;
}
