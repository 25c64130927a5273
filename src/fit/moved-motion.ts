import {
  BINS_PER_QUARTER,
  begun,
  HISTOGRAM_CLASSES,
  type Histogram,
  type MotionSummary,
  QUARTERS_PER_TURN,
  type WallMotion,
} from '../analysis/motion.js';
import type { Seconds } from '../units.js';

/** Quarters of a program, and where they come to lie. */
export interface QuarterRun {
  readonly from: number;
  readonly end: number;
  readonly to: number;
}

/**
 * The motion of a program that begins whole quarter turns later, with silence before it: all its
 * rows, so many quarters on. A whole number of quarters shifts no bin, so nothing is measured anew.
 */
export function delayMotion(motion: MotionSummary, quarters: number): MotionSummary {
  if (quarters === 0) return motion;
  const later = (quarters * motion.turnSeconds) / QUARTERS_PER_TURN;
  const all = { from: 0, end: motion.quarterCount, to: quarters };
  return movedMotion(motion, motion.durationSeconds + later, [all]);
}

/**
 * The rows of a motion at other quarters, silence in those that none comes to. They are those of the
 * program moved likewise where a quarter lies in it as it lay, and faces the turn that it faced.
 */
export function movedMotion(
  motion: MotionSummary,
  durationSeconds: Seconds,
  runs: readonly QuarterRun[],
): MotionSummary {
  const quarterCount = QUARTERS_PER_TURN * (begun(durationSeconds / motion.turnSeconds) + 1);
  const bins = (row: Float64Array) => moved(row, runs, quarterCount, BINS_PER_QUARTER);
  const rows = (row: Float64Array) => moved(row, runs, quarterCount, 1);
  const histogram = (own: Histogram) => movedHistogram(own, runs, quarterCount);
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

function moved(
  row: Float64Array,
  runs: readonly QuarterRun[],
  count: number,
  each: number,
): Float64Array {
  return filled(new Float64Array(count * each), row, runs, each);
}

/** Silent quarters have samples too, all of them in the lowest class. */
function movedHistogram(
  { topClass, counts }: Histogram,
  runs: readonly QuarterRun[],
  quarterCount: number,
): Histogram {
  const samples = counts.subarray(0, HISTOGRAM_CLASSES).reduce((sum, count) => sum + count, 0);
  const all = new Uint32Array(quarterCount * HISTOGRAM_CLASSES);
  for (let last = HISTOGRAM_CLASSES - 1; last < all.length; last += HISTOGRAM_CLASSES) {
    all[last] = samples;
  }
  return {
    topClass: filled(new Int16Array(quarterCount), topClass, runs, 1),
    counts: filled(all, counts, runs, HISTOGRAM_CLASSES),
  };
}

/** As far as there is room: what is beyond is the silence after the program. */
function filled<T extends Float64Array | Int16Array | Uint32Array>(
  target: T,
  row: T,
  runs: readonly QuarterRun[],
  each: number,
): T {
  for (const { from, end, to } of runs) {
    const at = to * each;
    target.set(
      row.subarray(from * each, Math.min(end * each, from * each + target.length - at)),
      at,
    );
  }
  return target;
}
