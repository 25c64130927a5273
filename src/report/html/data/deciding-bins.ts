import { BINS_PER_QUARTER } from '../../../analysis/motion.js';
import type { Metres } from '../../../units.js';

/** By how much of a level-0 motion the advance of a plan is taken to change from bin to bin. */
const CHANGE: Metres = 2e-6;

/** A bit a bin of each quarter turn, bin 0 the lowest. */
export type BinMask = Uint16Array;

/**
 * The bins that can decide over a whole quarter: the corners of the row's upper convex hull.
 * What a plan leaves is linear inside a quarter, and the largest of a row less any linear function
 * lies at a corner of the hull.
 */
export function hullBins(row: Float64Array): BinMask {
  return eachQuarter(row, (value) => {
    const corners: number[] = [];
    for (let bin = 0; bin < BINS_PER_QUARTER; bin++) {
      while (corners.length > 1) {
        const [before = 0, last = 0] = corners.slice(-2);
        const isUnder =
          (value(last) - value(before)) * (bin - before) <=
          (value(bin) - value(before)) * (last - before);
        if (!isUnder) break;
        corners.pop();
      }
      corners.push(bin);
    }
    return corners;
  });
}

/**
 * The bins that can decide over the part of a quarter up to any bin, or from any bin on, as long as
 * what a plan leaves changes by at most CHANGE a bin; and those of the whole quarter. Hot spots are
 * told a turn apart, which may leave a part of a quarter.
 */
export function decidingBins(row: Float64Array): BinMask {
  const parts = eachQuarter(row, (value) =>
    Array.from({ length: BINS_PER_QUARTER }, (_, bin) => bin).filter((bin) => {
      const beats = (from: number, until: number) => {
        for (let other = from; other < until; other++) {
          if (value(bin) < value(other) - CHANGE * Math.abs(other - bin)) return false;
        }
        return true;
      };
      return beats(0, bin) || beats(bin + 1, BINS_PER_QUARTER);
    }),
  );
  return eitherMask(parts, hullBins(row));
}

export function eitherMask(one: BinMask, other: BinMask): BinMask {
  return one.map((bits, quarter) => bits | (other[quarter] ?? 0));
}

export function withoutMask(one: BinMask, other: BinMask): BinMask {
  return one.map((bits, quarter) => bits & ~(other[quarter] ?? 0));
}

/** The mask of the quarters `quarters` later; none after the last. */
export function laterMask(mask: BinMask, quarters: number): BinMask {
  return mask.map((_, quarter) => mask[quarter + quarters] ?? 0);
}

/** Bins of a row that a mask holds, ascending. */
export function* binsOf(mask: BinMask): Generator<number> {
  for (const [quarter, bits] of mask.entries()) {
    for (let bin = 0; bin < BINS_PER_QUARTER; bin++) {
      if ((bits >> bin) & 1) yield quarter * BINS_PER_QUARTER + bin;
    }
  }
}

function eachQuarter(
  row: Float64Array,
  choose: (value: (bin: number) => number) => readonly number[],
): BinMask {
  const mask = new Uint16Array(row.length / BINS_PER_QUARTER);
  for (const quarter of mask.keys()) {
    const value = (bin: number) => row[quarter * BINS_PER_QUARTER + bin] ?? 0;
    mask[quarter] = choose(value).reduce((bits, bin) => bits | (1 << bin), 0);
  }
  return mask;
}
