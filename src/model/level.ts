import type { Planner } from '../settings.js';
import type { Headroom } from './forecast-types.js';
import { emptyPlanRows, type Plan, type PlanRows, planPitch, planSide } from './plan.js';
import { spareRadius } from './plan-report.js';
import type { PlannedSide } from './planned-side.js';
import { emptyTrialRows, type Limit, type TrialRows, traceLimit } from './trace-limit.js';

/** The levels that are searched, dB. */
const LOWEST_DB = -12;
const HIGHEST_DB = 12;
/** How near to its limit the search stops, dB: halves of one decibel, so exact. */
const RESOLUTION_DB = 1 / 256;

/** Rows of one level after the other: those of all of them would be the model's largest. */
export interface LevelRows {
  readonly plans: PlanRows;
  readonly trials: TrialRows;
}

export function emptyLevelRows(side: PlannedSide): LevelRows {
  return { plans: emptyPlanRows(side), trials: emptyTrialRows(side) };
}

/**
 * The largest levels of a side under one planner, re its program: `fillDb` with spare radius,
 * `traceDb` without a fault from land, pitch, groove, facet or bend. The recommended one is the
 * smaller, rounded down to `levelStep`. All are null where −12 … +12 dB holds none; `limitedBy` is
 * what the next louder level breaks, null where +12 dB breaks nothing.
 * @param rows are overwritten
 */
export function headroom(
  side: PlannedSide,
  planner: Planner,
  { plans, trials } = emptyLevelRows(side),
): Headroom {
  const fits = (levelDb: number) =>
    fillLimit(side, planPitch(side, planner, 10 ** (levelDb / 20), plans)) === null;
  const planAt = (levelDb: number) => planSide(side, planner, levelDb, plans);
  const traces = (levelDb: number) => traceLimit(side, planAt(levelDb), trials) === null;
  const fillDb = largestLevel(fits);
  const traceDb = largestLevel(traces);
  const smaller = fillDb === null || traceDb === null ? null : Math.min(fillDb, traceDb);
  return {
    fillDb,
    traceDb,
    recommendedDb:
      smaller === null
        ? null
        : levelBelow(smaller, side.settings.levelStep, (db) => fits(db) && traces(db)),
    limitedBy: limitAbove(side, smaller, planAt, trials),
  };
}

/**
 * The largest level that holds. Louder does not always mean worse: an automation that hears more
 * opens further; so the first decibel from above that holds is found before it is parted.
 */
export function largestLevel(holds: (levelDb: number) => boolean): number | null {
  let level = HIGHEST_DB;
  while (level >= LOWEST_DB && !holds(level)) level -= 1;
  if (level < LOWEST_DB) return null;
  if (level === HIGHEST_DB) return level;
  let broken = level + 1;
  while (broken - level > RESOLUTION_DB) {
    const middle = (level + broken) / 2;
    if (holds(middle)) level = middle;
    else broken = middle;
  }
  return level;
}

/** The next step of the level control down from `level` that holds; null below the search. */
export function levelBelow(
  level: number,
  levelStep: number,
  holds: (levelDb: number) => boolean,
): number | null {
  for (let step = Math.floor(level / levelStep + 1e-9); step * levelStep >= LOWEST_DB; step--) {
    if (holds(step * levelStep)) return step * levelStep;
  }
  return null;
}

function limitAbove(
  side: PlannedSide,
  level: number | null,
  planAt: (levelDb: number) => Plan,
  trials: TrialRows,
): Headroom['limitedBy'] {
  if (level === HIGHEST_DB) return null;
  const plan = planAt(level === null ? LOWEST_DB : level + RESOLUTION_DB);
  return traceLimit(side, plan, trials) ?? fillLimit(side, plan);
}

function fillLimit(side: PlannedSide, plan: Pick<Plan, 'pitch'>): Limit | null {
  return spareRadius(side, plan) >= 0 ? null : { id: 'too-long', atSeconds: null };
}
