import { BINS_PER_QUARTER } from '../analysis/motion.js';
import type { Plan } from './plan.js';
import type { PlannedSide } from './planned-side.js';

/** Land of one bin of the planned quarters without tolerances, the lesser of its two ends. */
export function nominalLand(side: PlannedSide, plan: Plan, bin: number): number {
  const quarter = Math.floor(bin / BINS_PER_QUARTER);
  const share = (bin % BINS_PER_QUARTER) / BINS_PER_QUARTER;
  const opening = plan.advance[quarter]! - plan.facing[quarter]!;
  const slope = plan.advance[quarter + 1]! - plan.facing[quarter + 1]! - opening;
  const first = opening + slope * share;
  return first + Math.min(0, slope / BINS_PER_QUARTER) - plan.gain * side.approach[bin]!;
}
