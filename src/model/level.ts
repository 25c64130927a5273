import type { Planner } from '../settings.js';
import { isTooDeep, isTooNarrow } from './findings/groove-findings.js';
import { isOvercut } from './findings/land-findings.js';
import { pitchLimitFindings } from './findings/pitch-limit.js';
import type { FindingId, Headroom } from './forecast-types.js';
import { FIRST_JUDGED, SHARE_LIMIT } from './limits.js';
import { type Plan, planSide } from './plan.js';
import { spareRadius } from './plan-report.js';
import { binStart, type PlannedSide, quarterStart } from './planned-side.js';
import { verify } from './verify.js';
import { bendShares, facetShares, type WindowShares } from './worst-second.js';

/** The levels that are searched, dB. */
const LOWEST_DB = -12;
const HIGHEST_DB = 12;
/** How near to its limit the search stops, dB: halves of one decibel, so exact. */
const RESOLUTION_DB = 1 / 256;

type Limit = NonNullable<Headroom['limitedBy']>;

/**
 * The largest levels of a side under one planner, re its program: `fillDb` with spare radius,
 * `traceDb` without a fault from land, pitch, groove, facet or bend. The recommended one is the
 * smaller, rounded down to `levelStep`. All are null where −12 … +12 dB holds none; `limitedBy` is
 * what the next louder level breaks, null where +12 dB breaks nothing.
 */
export function headroom(side: PlannedSide, planner: Planner): Headroom {
  const fits = (levelDb: number) => fillLimit(side, planSide(side, planner, levelDb)) === null;
  const traces = (levelDb: number) => traceLimit(side, planSide(side, planner, levelDb)) === null;
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
    limitedBy: limitAbove(side, planner, smaller),
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
  planner: Planner,
  level: number | null,
): Headroom['limitedBy'] {
  const plan = planSide(side, planner, level === null ? LOWEST_DB : level + RESOLUTION_DB);
  if (level !== null && level >= HIGHEST_DB) return null;
  return traceLimit(side, plan) ?? fillLimit(side, plan);
}

function fillLimit(side: PlannedSide, plan: Plan): Limit | null {
  return spareRadius(side, plan) >= 0 ? null : { id: 'too-long', atSeconds: null };
}

/** The first fault of a plan that a lower level would mend, the cheapest looked at first. */
export function traceLimit(side: PlannedSide, plan: Plan): Limit | null {
  const { settings } = side;
  const verified = verify(side, plan);
  const { land, landBin, widthMin, widthMinBin, widthMax } = verified;
  for (let quarter = 0; quarter < side.count; quarter++) {
    if (isTooNarrow(side, widthMin[quarter]!)) {
      return { id: 'lift', atSeconds: binStart(side, widthMinBin[quarter]!) };
    }
    if (isTooDeep(side, widthMax[quarter]!)) {
      return { id: 'too-deep', atSeconds: quarterStart(side, quarter) };
    }
    if (quarter >= FIRST_JUDGED && isOvercut(land[quarter]!)) {
      return { id: 'overcut', atSeconds: binStart(side, landBin[quarter]!) };
    }
  }
  const [pitchLimit] = pitchLimitFindings(side, verified);
  if (pitchLimit !== undefined) return { id: pitchLimit.id, atSeconds: pitchLimit.atSeconds };
  return (
    shareLimit(side, 'facet', facetShares(side, plan, settings.facetFault)) ??
    shareLimit(side, 'tight-bend', bendShares(side, plan, settings.lineTip))
  );
}

function shareLimit(side: PlannedSide, id: FindingId, { shares }: WindowShares): Limit | null {
  const window = shares.findIndex((share) => share > SHARE_LIMIT);
  return window < 0 ? null : { id, atSeconds: quarterStart(side, side.lead + window) };
}
