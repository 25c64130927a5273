import { BINS_PER_QUARTER, quarterMaximum } from '../../../analysis/motion.js';
import type { BinMask } from './deciding-bins.js';
import { binsOf } from './deciding-bins.js';
import { roundedLength } from './rounded.js';

/** Steps from the least to the largest of a quarter, as an unsigned byte. */
const STEPS = 255;

/** By how much a bin that is not kept lies under its neighbours, m. */
const UNDER = 1e-6;

/** The bins that a mask holds, one after the other, rounded. */
export function keptBins(row: Float64Array, mask: BinMask): Float32Array {
  return Float32Array.from(binsOf(mask), (bin) => roundedLength(row[bin] ?? 0));
}

/**
 * A row whose bins are kept where `mask` says; in between each lies a little under the lesser of its
 * neighbours that are kept in the same quarter, so that it decides nothing and ties with nothing.
 * First and last bin of a quarter are kept.
 */
export function filledRow(kept: Float32Array, mask: BinMask): Float64Array {
  const row = new Float64Array(mask.length * BINS_PER_QUARTER);
  let before = -1;
  let at = 0;
  for (const bin of binsOf(mask)) {
    const value = kept[at++] ?? 0;
    if (bin - before > 1) row.fill(Math.min(row[before] ?? 0, value) - UNDER, before + 1, bin);
    row[bin] = value;
    before = bin;
  }
  return row;
}

/**
 * How large the bins of a mask are, in 255 steps from `least` to `largest` of their quarter, down.
 */
export function coarseBins(
  row: Float64Array,
  mask: BinMask,
  least: Float64Array,
  largest: Float64Array,
): Uint8Array {
  return Uint8Array.from(binsOf(mask), (bin) => {
    const quarter = Math.floor(bin / BINS_PER_QUARTER);
    const [from = 0, to = 0] = [least[quarter], largest[quarter]];
    const share = to > from ? ((row[bin] ?? 0) - from) / (to - from) : 0;
    return Math.floor(STEPS * Math.min(1, Math.max(0, share)));
  });
}

/** Writes what `coarseBins` kept back into a row. */
export function setCoarseBins(
  row: Float64Array,
  mask: BinMask,
  codes: Uint8Array,
  least: Float64Array,
  largest: Float64Array,
): void {
  let at = 0;
  for (const bin of binsOf(mask)) {
    const quarter = Math.floor(bin / BINS_PER_QUARTER);
    const [from = 0, to = 0] = [least[quarter], largest[quarter]];
    const code = codes[at++] ?? 0;
    row[bin] = code === STEPS || to <= from ? to : from + ((to - from) * code) / STEPS;
  }
}

/** Largest bin of each quarter. */
export function largestOf(row: Float64Array): Float64Array {
  return Float64Array.from({ length: row.length / BINS_PER_QUARTER }, (_, quarter) =>
    quarterMaximum(row, quarter),
  );
}
