import { HISTOGRAM_CLASSES, type Histogram } from './motion.js';
import { ownMemory } from './row-memory.js';

/** Lowest class that is kept apart; everything under it counts into it. */
export const LOWEST_CLASS = -64;
/** Classes kept apart while a quarter is counted. */
export const COUNTING_CLASSES = 128;

const word = new DataView(new ArrayBuffer(4));

/**
 * Class c of a magnitude, 2^(c/4) ≤ |x| < 2^((c+1)/4): the binary exponent of x⁴, in f32. Where a
 * class begins is known to a part in ten million.
 */
export function classOf(x: number): number {
  const square = Math.fround(Math.fround(x) * Math.fround(x));
  word.setFloat32(0, square * square);
  const exponent = (word.getUint16(0) >> 7) - 127;
  return Math.min(Math.max(exponent, LOWEST_CLASS), LOWEST_CLASS + COUNTING_CLASSES - 1);
}

/** Classes by which √2 times a magnitude lies above it: exactly two. */
export const ROOT_TWO_CLASSES = 2;

/** Unit in which accelerations are squared and counted, m/s²: it puts their classes among these. */
export const ACCELERATION_UNIT = 1024;
/** Classes by which a number in that unit lies above it. */
export const ACCELERATION_CLASSES = 40;

/** An empty histogram over a number of quarters. */
export function emptyHistogram(quarterCount: number, memory = ownMemory): Histogram {
  return {
    topClass: new Int16Array(memory(2 * quarterCount)).fill(LOWEST_CLASS),
    counts: new Uint32Array(memory(4 * quarterCount * HISTOGRAM_CLASSES)),
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
