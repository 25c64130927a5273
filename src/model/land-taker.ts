import { BINS_PER_QUARTER } from '../analysis/motion.js';
import type { Hertz } from '../units.js';
import type { HotSpotCause, Wall } from './forecast-types.js';
import { movedFrequency } from './moved-wall.js';
import type { Plan } from './plan.js';
import type { PlannedSide } from './planned-side.js';

/** What takes the advance at a place. */
export interface LandTaker {
  readonly cause: HotSpotCause;
  readonly wall: Wall;
  readonly frequency: Hertz | null;
}

/**
 * What takes most of the advance at a bin: the groove's own opening over base width (`width`), or
 * the walls' motion, see `movedWall`.
 * Source: common practice, no published source.
 * @param bin of the planned quarters
 */
export function landTaker(side: PlannedSide, plan: Plan, bin: number): LandTaker {
  const { motion, baseFacing, lead } = side;
  const quarter = Math.floor(bin / BINS_PER_QUARTER);
  const opened = Math.max(
    plan.facing[quarter]! - baseFacing[quarter]!,
    plan.facing[quarter + 1]! - baseFacing[quarter + 1]!,
  );
  if (opened > plan.gain * Math.max(0, side.approachLoose[bin]!)) {
    return { cause: 'width', wall: 'both', frequency: null };
  }
  const programBin = bin - lead * BINS_PER_QUARTER;
  const moved = side.movedWallAt(programBin);
  const { cause, wall } = moved;
  return { cause, wall, frequency: movedFrequency(motion, programBin, moved) };
}
