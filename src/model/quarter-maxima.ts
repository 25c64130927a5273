import { BINS_PER_QUARTER, quarterMaximum } from '../analysis/motion.js';

/**
 * A bin row with motionless quarters before and after it.
 * @param lead quarters before it
 * @param count quarters of the result; what the row holds beyond them is left out
 * @param silent motionless quarters that lie before and after the row in its memory: if they are
 *   enough, the result is that memory
 */
export function padRow(row: Float64Array, lead: number, count: number, silent = 0): Float64Array {
  if (
    silent >= lead &&
    silent * BINS_PER_QUARTER + row.length >= (count - lead) * BINS_PER_QUARTER
  ) {
    const from = row.byteOffset - row.BYTES_PER_ELEMENT * lead * BINS_PER_QUARTER;
    return new Float64Array(row.buffer, from, count * BINS_PER_QUARTER);
  }
  const padded = new Float64Array(count * BINS_PER_QUARTER);
  const at = lead * BINS_PER_QUARTER;
  padded.set(row.subarray(0, padded.length - at), at);
  return padded;
}

/** Largest value of each quarter of a bin row, with motionless quarters around it like `padRow`. */
export function paddedMaxima(row: Float64Array, lead: number, count: number): Float64Array {
  const maxima = new Float64Array(count);
  const quarters = Math.min(row.length / BINS_PER_QUARTER, count - lead);
  for (let quarter = 0; quarter < quarters; quarter++) {
    maxima[lead + quarter] = quarterMaximum(row, quarter);
  }
  return maxima;
}
