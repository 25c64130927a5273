import type { Planner, Settings } from '../settings.js';

/** Which planner the lathe executes, `planner` being what `plan` is. */
export function executedPlanner({ executes }: Settings, planner: Planner): Planner {
  return executes === 'plan' ? planner : executes;
}
