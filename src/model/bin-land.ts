import { BINS_PER_QUARTER } from '../analysis/motion.js';
import type { Plan } from './plan.js';
import { landTolerance, type PlannedSide } from './planned-side.js';

/**
 * Land of every bin of the planned quarters, m, signed: what `verify` takes the least of per
 * quarter, in the same arithmetic, so that the least of 16 neighbours is its `land` to the last bit.
 */
export function binLand(side: PlannedSide, plan: Plan): Float64Array {
  const { approachLoose, count, settings } = side;
  const { advance, facing, gain } = plan;
  const tolerance = landTolerance(settings);
  const land = new Float64Array(count * BINS_PER_QUARTER);
  for (let quarter = 0; quarter < count; quarter++) {
    const free = advance[quarter]! - facing[quarter]!;
    const step = (advance[quarter + 1]! - facing[quarter + 1]! - free) / BINS_PER_QUARTER;
    let between = free + Math.min(0, step);
    const from = quarter * BINS_PER_QUARTER;
    for (let bin = from; bin < from + BINS_PER_QUARTER; bin++) {
      land[bin] = between - gain * approachLoose[bin]! - tolerance;
      between += step;
    }
  }
  return land;
}
