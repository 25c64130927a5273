import { HISTOGRAM_CLASSES, type Histogram } from '../analysis/motion.js';

/** A histogram of a side beside what is asked of its quarters again and again. */
export interface RankedHistogram extends Histogram {
  /** Largest magnitude per quarter, SI. */
  readonly peaks: Float64Array;
  /** All samples of a quarter, once they were asked for; 0 before. */
  readonly samples: Float64Array;
}

/** @param peaks largest magnitude per quarter, SI */
export function rankedHistogram(
  { topClass, counts }: Histogram,
  peaks: Float64Array,
): RankedHistogram {
  return { topClass, counts, peaks, samples: new Float64Array(peaks.length) };
}

/** All samples of a quarter. */
export function samplesIn({ counts, samples }: RankedHistogram, quarter: number): number {
  if (samples[quarter] === 0) {
    const first = quarter * HISTOGRAM_CLASSES;
    samples[quarter] = countsBetween(counts, first, first + HISTOGRAM_CLASSES);
  }
  return samples[quarter]!;
}

/**
 * Samples of a quarter over a magnitude; inside a class as if they lay evenly on a logarithmic
 * scale, in the highest up to the quarter's peak. In the lowest entry, 36 dB under the largest sample, all count.
 * The counts stay those of the motion, and are summed where they are asked for: few lie over any
 * limit, and sums of all of them would be the model's largest rows.
 * @param magnitude SI, over 0
 */
export function samplesOver(
  histogram: RankedHistogram,
  quarter: number,
  magnitude: number,
): number {
  const { topClass, counts, peaks } = histogram;
  if (magnitude >= peaks[quarter]!) return 0;
  // Places on the scale of classes.
  const position = 4 * Math.log2(magnitude);
  const highest = 4 * Math.log2(peaks[quarter]!);
  const at = Math.floor(position);
  const entry = topClass[quarter]! - at;
  if (entry < 0 || position >= highest) return 0;
  if (entry >= HISTOGRAM_CLASSES - 1) return samplesIn(histogram, quarter);
  const row = quarter * HISTOGRAM_CLASSES;
  const higher = countsBetween(counts, row, row + entry);
  const top = Math.min(at + 1, highest);
  return higher + (counts[row + entry]! * (top - position)) / (top - at);
}

function countsBetween(counts: Uint32Array, first: number, end: number): number {
  let sum = 0;
  for (let at = first; at < end; at++) sum += counts[at]!;
  return sum;
}
