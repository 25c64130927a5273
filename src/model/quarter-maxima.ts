import { BINS_PER_QUARTER, quarterMaximum } from '../analysis/motion.js';

/**
 * A bin row with motionless quarters before and after it.
 * @param lead quarters before it
 * @param count quarters of the result; what the row holds beyond them is left out
 */
export function padRow(row: Float64Array, lead: number, count: number): Float64Array {
  const padded = new Float64Array(count * BINS_PER_QUARTER);
  const at = lead * BINS_PER_QUARTER;
  padded.set(row.subarray(0, padded.length - at), at);
  return padded;
}

/** Largest value of each quarter of a bin row. */
export function quarterMaxima(row: Float64Array): Float64Array {
  const maxima = new Float64Array(row.length / BINS_PER_QUARTER);
  for (let quarter = 0; quarter < maxima.length; quarter++) {
    maxima[quarter] = quarterMaximum(row, quarter);
  }
  return maxima;
}

/** The same with motionless quarters around them, as `padRow` puts them around the bins. */
export function paddedMaxima(row: Float64Array, lead: number, count: number): Float64Array {
  const padded = new Float64Array(count);
  padded.set(quarterMaxima(row).subarray(0, count - lead), lead);
  return padded;
}
