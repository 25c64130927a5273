import { HISTOGRAM_CLASSES, type Histogram } from '../analysis/motion.js';

/** A histogram of a side beside what is asked of its quarters again and again. */
export interface RankedHistogram extends Histogram {
  /** Position of the quarter's largest sample on the scale of classes, 4·log₂ of it. */
  readonly topPosition: Float64Array;
  /** All samples of a quarter. */
  readonly samples: Float64Array;
}

/**
 * The counts stay those of the motion, and are summed where they are asked for: few lie over any
 * limit, and sums of all of them would be the model's largest rows.
 * @param peaks largest magnitude per quarter, SI
 */
export function rankedHistogram(
  { topClass, counts }: Histogram,
  peaks: Float64Array,
): RankedHistogram {
  return {
    topClass,
    counts,
    topPosition: peaks.map((peak) => 4 * Math.log2(peak)),
    samples: peaks.map((_, quarter) =>
      countsBetween(counts, quarter * HISTOGRAM_CLASSES, (quarter + 1) * HISTOGRAM_CLASSES),
    ),
  };
}

/** All samples of a quarter. */
export function samplesIn({ samples }: RankedHistogram, quarter: number): number {
  return samples[quarter]!;
}

/**
 * Samples of a quarter over a magnitude; inside a class as if they lay evenly on a logarithmic
 * scale, in the highest up to the quarter's peak. In the lowest entry, 36 dB under the largest sample, all count.
 * @param magnitude SI, over 0
 */
export function samplesOver(
  { topClass, counts, topPosition, samples }: RankedHistogram,
  quarter: number,
  magnitude: number,
): number {
  const position = 4 * Math.log2(magnitude);
  const at = Math.floor(position);
  const entry = topClass[quarter]! - at;
  if (entry < 0 || position >= topPosition[quarter]!) return 0;
  if (entry >= HISTOGRAM_CLASSES - 1) return samples[quarter]!;
  const row = quarter * HISTOGRAM_CLASSES;
  const higher = countsBetween(counts, row, row + entry);
  const top = Math.min(at + 1, topPosition[quarter]!);
  return higher + (counts[row + entry]! * (top - position)) / (top - at);
}

function countsBetween(counts: Uint32Array, first: number, end: number): number {
  let sum = 0;
  for (let at = first; at < end; at++) sum += counts[at]!;
  return sum;
}
