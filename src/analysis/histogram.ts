import { HISTOGRAM_CLASSES, type Histogram } from './motion.js';

/** Lowest class that is kept apart; everything under it counts into it. */
export const LOWEST_CLASS = -64;
/** Classes kept apart while a quarter is counted. */
export const COUNTING_CLASSES = 192;

const word = new DataView(new ArrayBuffer(8));

/** Class c of a magnitude, 2^(c/4) ≤ |x| < 2^((c+1)/4): the binary exponent of x⁴. */
export function classOf(x: number): number {
  word.setFloat64(0, x * x * (x * x));
  const exponent = (word.getUint16(0) >> 4) - 1023;
  return Math.min(Math.max(exponent, LOWEST_CLASS), LOWEST_CLASS + COUNTING_CLASSES - 1);
}

/** Classes by which √2 times a magnitude lies above it: exactly two. */
export const ROOT_TWO_CLASSES = 2;

/** An empty histogram over a number of quarters. */
export function emptyHistogram(quarterCount: number): Histogram {
  return {
    topClass: new Int16Array(quarterCount).fill(LOWEST_CLASS),
    counts: new Uint32Array(quarterCount * HISTOGRAM_CLASSES),
  };
}

/**
 * Files one quarter's counts: from its highest class that counted anything downwards.
 * @param counts COUNTING_CLASSES long, from LOWEST_CLASS upwards
 * @param shift classes that what is filed lies above what was counted
 */
export function fileQuarter(
  histogram: Histogram,
  quarter: number,
  counts: Uint32Array,
  shift = 0,
): void {
  let top = counts.length - 1;
  while (top > 0 && counts[top] === 0) top--;
  histogram.topClass[quarter] = top + LOWEST_CLASS + shift;
  const row = quarter * HISTOGRAM_CLASSES;
  for (let index = top; index >= 0; index--) {
    const under = Math.min(top - index, HISTOGRAM_CLASSES - 1);
    histogram.counts[row + under]! += counts[index]!;
  }
}
