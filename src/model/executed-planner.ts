import type { Planner, Settings } from '../settings.js';
import type { PitchPlanner } from './plan.js';

/**
 * A planner of the model, for what was asked.
 * @throws RangeError for `tightest`, which needs a solver from outside of the model
 */
export function pitchPlanner(planner: Planner): PitchPlanner {
  if (planner === 'tightest') throw new RangeError('the model has no planner tightest');
  return planner;
}

/** Which planner the lathe executes, `planner` being what `plan` is. */
export function executedPlanner({ executes }: Settings, planner: Planner): PitchPlanner {
  return executes === 'plan' ? pitchPlanner(planner) : executes;
}
