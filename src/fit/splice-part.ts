import {
  BINS_PER_QUARTER,
  HISTOGRAM_CLASSES,
  type Histogram,
  type LowBand,
  type MotionSummary,
  type WallMotion,
} from '../analysis/motion.js';
import type { PartMotion } from '../analysis/part-motion.js';

/**
 * A program's motion with the rows of one stretch measured anew. A part's rows are those that the
 * whole would have there, so this is the motion of the changed program wherever the part covers all
 * that the change can reach. What is said of the program's samples stays what it was.
 */
export function splicePart(motion: MotionSummary, part: PartMotion): MotionSummary {
  const quarter = part.part.firstQuarter;
  const bins = (row: Float64Array, own: Float64Array) =>
    spliced(row, own, quarter * BINS_PER_QUARTER);
  return {
    ...motion,
    approach: bins(motion.approach, part.bins.approach),
    approachLoose: bins(motion.approachLoose, part.bins.approachLoose),
    lift: bins(motion.lift, part.bins.lift),
    sink: bins(motion.sink, part.bins.sink),
    lateral: bins(motion.lateral, part.bins.lateral),
    outward: bins(motion.outward, part.bins.outward),
    inward: bins(motion.inward, part.bins.inward),
    left: wall(motion.left, part.left, quarter),
    right: wall(motion.right, part.right, quarter),
    lowBand: lowBand(motion.lowBand, part.lowBand, quarter),
  };
}

function spliced(row: Float64Array, own: Float64Array, at: number): Float64Array {
  const copy = row.slice();
  copy.set(own, at);
  return copy;
}

function wall(all: WallMotion, own: WallMotion, at: number): WallMotion {
  return {
    velocityPeak: spliced(all.velocityPeak, own.velocityPeak, at),
    accelerationPeak: spliced(all.accelerationPeak, own.accelerationPeak, at),
    velocityMeanSquare: spliced(all.velocityMeanSquare, own.velocityMeanSquare, at),
    accelerationMeanSquare: spliced(all.accelerationMeanSquare, own.accelerationMeanSquare, at),
    edgeVelocityHistogram: histogram(all.edgeVelocityHistogram, own.edgeVelocityHistogram, at),
    accelerationHistogram: histogram(all.accelerationHistogram, own.accelerationHistogram, at),
  };
}

function histogram(all: Histogram, own: Histogram, at: number): Histogram {
  const topClass = all.topClass.slice();
  const counts = all.counts.slice();
  topClass.set(own.topClass, at);
  counts.set(own.counts, at * HISTOGRAM_CLASSES);
  return { topClass, counts };
}

function lowBand(all: LowBand, own: LowBand, at: number): LowBand {
  return {
    correlation: spliced(all.correlation, own.correlation, at),
    phase: spliced(all.phase, own.phase, at),
    verticalShare: spliced(all.verticalShare, own.verticalShare, at),
    strongestFrequency: spliced(all.strongestFrequency, own.strongestFrequency, at),
    verticalAmplitude: spliced(all.verticalAmplitude, own.verticalAmplitude, at),
    lateralAmplitude: spliced(all.lateralAmplitude, own.lateralAmplitude, at),
  };
}
