import { BINS_PER_QUARTER, quarterMaximum } from '../../../analysis/motion.js';
import { binsOf } from './deciding-bins.js';
import type { KeptBins } from './kept-motion.js';
import { lengthOfSteps } from './rounded.js';

/** By how much a bin that is not kept lies under its neighbours, m. */
const UNDER = 1e-6;

/**
 * A row of lengths whose bins are kept where the mask says; in between each lies a little under the
 * lesser of its neighbours that are kept in the same quarter, so that it decides nothing and ties
 * with nothing. First and last bin of a quarter are kept.
 */
export function filledRow({ mask, steps }: KeptBins): Float64Array {
  const row = new Float64Array(steps.length);
  let before = -1;
  for (const bin of binsOf(mask)) {
    const value = lengthOfSteps(steps[bin] ?? 0);
    if (bin - before > 1) row.fill(Math.min(row[before] ?? 0, value) - UNDER, before + 1, bin);
    row[bin] = value;
    before = bin;
  }
  return row;
}

/** A row of which every bin is its quarter's largest. */
export function levelRow(most: Int32Array): Float64Array {
  const row = new Float64Array(most.length * BINS_PER_QUARTER);
  for (const bin of row.keys()) {
    row[bin] = lengthOfSteps(most[Math.floor(bin / BINS_PER_QUARTER)] ?? 0);
  }
  return row;
}

/** Largest bin of each quarter. */
export function largestOf(row: Float64Array): Float64Array {
  return Float64Array.from({ length: row.length / BINS_PER_QUARTER }, (_, quarter) =>
    quarterMaximum(row, quarter),
  );
}
