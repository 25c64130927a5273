import type { Planner } from '../settings.js';
import { largestLevel } from './level.js';
import { type Plan, planSide } from './plan.js';
import { spareRadius } from './plan-report.js';
import type { PlannedSide } from './planned-side.js';
import { traceLimit } from './trace-limit.js';

/** The highest levels of a side, as its headroom has them; null where −12 … +12 dB holds none. */
export interface HighestLevels {
  readonly fillDb: number | null;
  readonly traceDb: number | null;
}

/** `fillDb` and `traceDb` of the headroom alone, each level planned once for both. */
export function highestLevels(side: PlannedSide, planner: Planner): HighestLevels {
  const plans = new Map<number, Plan>();
  const planAt = (levelDb: number): Plan => {
    const plan = plans.get(levelDb) ?? planSide(side, planner, levelDb);
    plans.set(levelDb, plan);
    return plan;
  };
  return {
    traceDb: largestLevel((levelDb) => traceLimit(side, planAt(levelDb)) === null),
    fillDb: largestLevel((levelDb) => spareRadius(side, planAt(levelDb)) >= 0),
  };
}
