import type { MotionSummary, WallMotion } from '../../../analysis/motion.js';
import type { MovedWallAt } from '../../../model/planned-rows.js';
import { contactMask, setCoarseLift } from './contact-lift.js';
import { filledRow, levelRow } from './filled-row.js';
import type { KeptMotion, KeptWall } from './kept-motion.js';
import { movedWallOf } from './moved-wall-code.js';
import { lengthOfSteps, numberOfSteps } from './rounded.js';

/** A summary that forecasts as the one that was kept. */
export interface KeptSummary {
  /** What is not kept of it is NaN, or decides nothing. */
  readonly motion: MotionSummary;
  readonly movedWallAt: MovedWallAt;
}

/** @param known what is no column */
export function keptSummary(
  kept: KeptMotion,
  known: Pick<MotionSummary, 'turnSeconds' | 'durationSeconds' | 'quarterCount' | 'program'>,
): KeptSummary {
  const unknown = new Float64Array(known.quarterCount).fill(Number.NaN);
  const motion: MotionSummary = {
    turnSeconds: known.turnSeconds,
    durationSeconds: known.durationSeconds,
    quarterCount: known.quarterCount,
    program: known.program,
    approach: filledRow(kept.approach),
    approachLoose: filledRow(kept.approachLoose),
    lift: filledRow(kept.lift),
    sink: filledRow(kept.sink),
    lateral: levelRow(kept.lateralMost),
    outward: levelRow(kept.outwardMost),
    inward: levelRow(kept.inwardMost),
    left: wallOf(kept.left),
    right: wallOf(kept.right),
    lowBand: {
      strongestFrequency: Float64Array.from(kept.strongestFrequency, numberOfSteps),
      verticalAmplitude: Float64Array.from(kept.verticalAmplitude, lengthOfSteps),
      correlation: unknown,
      phase: unknown,
      verticalShare: unknown,
      lateralAmplitude: unknown,
    },
  };
  const places = contactMask(kept.approachLoose.mask, kept.lift.mask);
  setCoarseLift(motion, places, kept.contactLift);
  return { motion, movedWallAt: (bin) => movedWallOf(kept.movedWalls[bin] ?? 0) };
}

function wallOf(wall: KeptWall): WallMotion {
  const row = (steps: Int32Array) => Float64Array.from(steps, numberOfSteps);
  return {
    velocityPeak: row(wall.velocityPeak),
    accelerationPeak: row(wall.accelerationPeak),
    velocityMeanSquare: row(wall.velocityMeanSquare),
    accelerationMeanSquare: row(wall.accelerationMeanSquare),
    edgeVelocityHistogram: wall.edgeVelocity,
    accelerationHistogram: wall.acceleration,
  };
}
