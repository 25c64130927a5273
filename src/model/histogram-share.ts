import { HISTOGRAM_CLASSES, type Histogram } from '../analysis/motion.js';

/** A histogram whose counts are summed from the highest class down. */
export interface CumulativeHistogram {
  readonly topClass: Int16Array;
  /** Position of the quarter's largest sample on the scale of classes, 4·log₂ of it. */
  readonly topPosition: Float64Array;
  /** Row q, HISTOGRAM_CLASSES long: samples in class topClass[q] − k or above. */
  readonly above: Float64Array;
}

/**
 * @param peaks largest magnitude per quarter, SI
 */
export function cumulativeHistogram(
  { topClass, counts }: Histogram,
  peaks: Float64Array,
): CumulativeHistogram {
  const above = new Float64Array(counts.length);
  for (let entry = 0; entry < counts.length; entry++) {
    const higher = entry % HISTOGRAM_CLASSES === 0 ? 0 : above[entry - 1]!;
    above[entry] = higher + counts[entry]!;
  }
  return { topClass, topPosition: peaks.map((peak) => 4 * Math.log2(peak)), above };
}

/** All samples of a quarter. */
export function samplesIn({ above }: CumulativeHistogram, quarter: number): number {
  return above[quarter * HISTOGRAM_CLASSES + HISTOGRAM_CLASSES - 1]!;
}

/**
 * Samples of a quarter over a magnitude; inside a class as if they lay evenly on a logarithmic
 * scale, in the highest up to the quarter's peak. In the lowest entry, 36 dB under the largest sample, all count.
 * @param magnitude SI, over 0
 */
export function samplesOver(
  { topClass, topPosition, above }: CumulativeHistogram,
  quarter: number,
  magnitude: number,
): number {
  const position = 4 * Math.log2(magnitude);
  const at = Math.floor(position);
  const entry = topClass[quarter]! - at;
  if (entry < 0 || position >= topPosition[quarter]!) return 0;
  const row = quarter * HISTOGRAM_CLASSES;
  if (entry >= HISTOGRAM_CLASSES - 1) return above[row + HISTOGRAM_CLASSES - 1]!;
  const higher = entry === 0 ? 0 : above[row + entry - 1]!;
  const top = Math.min(at + 1, topPosition[quarter]!);
  return higher + ((above[row + entry]! - higher) * (top - position)) / (top - at);
}
