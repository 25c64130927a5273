import {
  BINS_PER_QUARTER,
  begun,
  HISTOGRAM_CLASSES,
  type Histogram,
  type MotionSummary,
  QUARTERS_PER_TURN,
  type WallMotion,
} from '../analysis/motion.js';

/**
 * The motion of a program that begins whole quarter turns later, with silence before it: all its
 * rows, so many quarters on. A whole number of quarters shifts no bin, so nothing is measured anew.
 */
export function delayMotion(motion: MotionSummary, quarters: number): MotionSummary {
  if (quarters === 0) return motion;
  const quarterSeconds = motion.turnSeconds / QUARTERS_PER_TURN;
  const durationSeconds = motion.durationSeconds + quarters * quarterSeconds;
  const quarterCount = QUARTERS_PER_TURN * (begun(durationSeconds / motion.turnSeconds) + 1);
  const bins = (row: Float64Array) => later(row, quarters, quarterCount, BINS_PER_QUARTER);
  const rows = (row: Float64Array) => later(row, quarters, quarterCount, 1);
  const histogram = (own: Histogram) => laterHistogram(own, quarters, quarterCount);
  const wall = (own: WallMotion): WallMotion => ({
    velocityPeak: rows(own.velocityPeak),
    accelerationPeak: rows(own.accelerationPeak),
    velocityMeanSquare: rows(own.velocityMeanSquare),
    accelerationMeanSquare: rows(own.accelerationMeanSquare),
    edgeVelocityHistogram: histogram(own.edgeVelocityHistogram),
    accelerationHistogram: histogram(own.accelerationHistogram),
  });
  const { lowBand } = motion;
  return {
    ...motion,
    durationSeconds,
    quarterCount,
    approach: bins(motion.approach),
    approachLoose: bins(motion.approachLoose),
    lift: bins(motion.lift),
    sink: bins(motion.sink),
    lateral: bins(motion.lateral),
    outward: bins(motion.outward),
    inward: bins(motion.inward),
    left: wall(motion.left),
    right: wall(motion.right),
    lowBand: {
      correlation: rows(lowBand.correlation),
      phase: rows(lowBand.phase),
      verticalShare: rows(lowBand.verticalShare),
      strongestFrequency: rows(lowBand.strongestFrequency),
      verticalAmplitude: rows(lowBand.verticalAmplitude),
      lateralAmplitude: rows(lowBand.lateralAmplitude),
    },
  };
}

function later(row: Float64Array, quarters: number, count: number, each: number): Float64Array {
  return fitted(new Float64Array(count * each), row, quarters * each);
}

/** The silent quarters have samples too, all of them in the lowest class. */
function laterHistogram(
  { topClass, counts }: Histogram,
  quarters: number,
  quarterCount: number,
): Histogram {
  const at = quarters * HISTOGRAM_CLASSES;
  const all = fitted(new Uint32Array(quarterCount * HISTOGRAM_CLASSES), counts, at);
  const samples = counts.subarray(0, HISTOGRAM_CLASSES).reduce((sum, count) => sum + count, 0);
  for (let last = HISTOGRAM_CLASSES - 1; last < at; last += HISTOGRAM_CLASSES) all[last] = samples;
  return { topClass: fitted(new Int16Array(quarterCount), topClass, quarters), counts: all };
}

/** `row` from `at` on, as far as there is room: what is beyond is the silence after the program. */
function fitted<T extends Float64Array | Int16Array | Uint32Array>(
  target: T,
  row: T,
  at: number,
): T {
  target.set(row.subarray(0, target.length - at), at);
  return target;
}
