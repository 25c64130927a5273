import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../../../analysis/motion.js';
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
 * The bins that can decide over a whole quarter or over what hot spots, told a turn apart, leave of
 * it: the part up to any bin or from any bin on, and, between two of them that are a little more
 * than two turns apart, the part in the middle; as long as what a plan leaves changes by at most
 * CHANGE a bin. Left out is the quarter in which the finishing groove begins, if a hot spot a turn
 * before takes its start as well.
 */
export function decidingBins(row: Float64Array): BinMask {
  const reaches = new Map<number, Reach>();
  const ends = eachQuarter(row, (value, quarter) =>
    Array.from({ length: BINS_PER_QUARTER }, (_, bin) => bin).filter((bin) => {
      const reach = reachOf(value, bin);
      reaches.set(quarter * BINS_PER_QUARTER + bin, reach);
      return reach.from === 0 || reach.until === BINS_PER_QUARTER;
    }),
  );
  let mask = eitherMask(ends, hullBins(row));
  // What lies in the middle may be a hot spot itself, and leave another middle beside it.
  for (;;) {
    const more = eitherMask(mask, middleBins(mask, reaches));
    if (more.every((bits, quarter) => bits === mask[quarter])) return mask;
    mask = more;
  }
}

/** The bins of a quarter, last one excluded, over which one decides. */
interface Reach {
  readonly from: number;
  readonly until: number;
}

function reachOf(value: (bin: number) => number, bin: number): Reach {
  const beats = (other: number) => value(bin) >= value(other) - CHANGE * Math.abs(other - bin);
  let from = bin;
  while (from > 0 && beats(from - 1)) from -= 1;
  let until = bin + 1;
  while (until < BINS_PER_QUARTER && beats(until)) until += 1;
  return { from, until };
}

/** The bins that decide from the place of a bin a turn earlier to that of one a turn later. */
function middleBins(places: BinMask, reaches: ReadonlyMap<number, Reach>): BinMask {
  const before = laterMask(places, -QUARTERS_PER_TURN);
  const after = laterMask(places, QUARTERS_PER_TURN);
  return places.map((_, quarter) => {
    let middle = 0;
    for (let bin = 0; bin < BINS_PER_QUARTER; bin++) {
      const reach = reaches.get(quarter * BINS_PER_QUARTER + bin) ?? { from: bin, until: bin + 1 };
      const begins = hasBin(before[quarter] ?? 0, reach.from, bin + 1);
      if (begins && hasBin(after[quarter] ?? 0, bin, reach.until)) middle |= 1 << bin;
    }
    return middle;
  });
}

/** Whether there is a bin of a quarter's bits from one on and before another. */
function hasBin(bits: number, from: number, until: number): boolean {
  return (bits & ((1 << until) - 1) & ~((1 << from) - 1)) !== 0;
}

export function eitherMask(one: BinMask, other: BinMask): BinMask {
  return one.map((bits, quarter) => bits | (other[quarter] ?? 0));
}

export function withoutMask(one: BinMask, other: BinMask): BinMask {
  return one.map((bits, quarter) => bits & ~(other[quarter] ?? 0));
}

/** The mask of the quarters `quarters` later; none beyond the ends. */
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
  choose: (value: (bin: number) => number, quarter: number) => readonly number[],
): BinMask {
  const mask = new Uint16Array(row.length / BINS_PER_QUARTER);
  for (const quarter of mask.keys()) {
    const value = (bin: number) => row[quarter * BINS_PER_QUARTER + bin] ?? 0;
    mask[quarter] = choose(value, quarter).reduce((bits, bin) => bits | (1 << bin), 0);
  }
  return mask;
}
