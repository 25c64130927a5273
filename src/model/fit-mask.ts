import { BINS_PER_QUARTER, type MotionSummary, type WallMotion } from '../analysis/motion.js';

/** Quarters of a motion summary, and the one after them. */
export interface QuarterSpan {
  readonly first: number;
  readonly end: number;
}

/**
 * A program's motion with some quarters left out of all judgement: there the groove runs
 * unmodulated. What they did to the turn after them stays with that turn, and so does what a
 * machine's automation hears of them: deaf to them, it would meet what comes next unprepared, and
 * leaving seconds out would lower the level.
 */
export function withoutQuarters(
  motion: MotionSummary,
  spans: readonly QuarterSpan[],
): MotionSummary {
  const bins = (row: Float64Array) => cleared(row, spans, BINS_PER_QUARTER);
  return {
    ...motion,
    approach: bins(motion.approach),
    approachLoose: bins(motion.approachLoose),
    lift: bins(motion.lift),
    sink: bins(motion.sink),
    left: wall(motion.left, spans),
    right: wall(motion.right, spans),
  };
}

/** Without its peaks no sample of a quarter is over anything; how many there are stays known. */
function wall(motion: WallMotion, spans: readonly QuarterSpan[]): WallMotion {
  return {
    ...motion,
    velocityPeak: cleared(motion.velocityPeak, spans, 1),
    accelerationPeak: cleared(motion.accelerationPeak, spans, 1),
    velocityMeanSquare: cleared(motion.velocityMeanSquare, spans, 1),
    accelerationMeanSquare: cleared(motion.accelerationMeanSquare, spans, 1),
  };
}

function cleared(row: Float64Array, spans: readonly QuarterSpan[], each: number): Float64Array {
  const copy = row.slice();
  for (const { first, end } of spans) copy.fill(0, Math.max(0, first) * each, end * each);
  return copy;
}
