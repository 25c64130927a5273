import type { MotionSummary } from '../analysis/motion.js';
import type { Planner, Settings } from '../settings.js';
import type { Metres } from '../units.js';
import { allFindings, verdictOf } from './findings/all-findings.js';
import type { Headroom, SideForecast, SourceFacts } from './forecast-types.js';
import { headLoad } from './head-load.js';
import { hotSpots } from './hot-spots.js';
import { emptyLevelRows, headroom } from './level.js';
import { type Plan, type PlanRows, planPitch, planSide } from './plan.js';
import { planReport, radiusUsed } from './plan-report.js';
import type { PlannedRows } from './planned-rows.js';
import { type PlannedSide, plannedSide } from './planned-side.js';
import { type ColumnMemory, quarterColumns } from './quarter-columns.js';
import type { HandSettings } from './side-plan-input.js';
import { suggestedOrder } from './suggested-order.js';
import { trackFigures } from './track-figures.js';
import { type Verified, verify } from './verify.js';

/** What is asked of a side, beyond the profile. */
export interface SideRequest {
  readonly levelDb: number;
  /** Which planner `plan` is. */
  readonly planner: Planner;
  readonly source: SourceFacts;
  /** What the operator sets by hand along the side. */
  readonly hand?: HandSettings;
  /** Whether a running order of its tracks is wanted that bends less. */
  readonly order?: boolean;
  /** Of the plan that is executed, where it is known: it is the same at every level. */
  readonly headroom?: Headroom;
  /** Of the side's motion and as many silent turns, where they are known. */
  readonly rows?: PlannedRows;
  /** Where it is known, or is not worth its time. */
  readonly tightest?: SideForecast['tightest'];
  /** Where the quarters' columns are to lie, if not in memory of their own. */
  readonly memory?: ColumnMemory;
}

/** A forecast with the plans that it was made from. */
export interface PlannedForecast {
  readonly side: PlannedSide;
  readonly machine: Verified;
  readonly fixed: Verified;
  readonly plan: Verified;
  /** Which of them the verdict is about. */
  readonly executed: Verified;
  readonly forecast: SideForecast;
}

/**
 * Everything the model says of a side, out of its motion summary: plans, land, findings, headroom.
 * Verdict, findings, hot spots and headroom are about the plan that the profile `executes`.
 */
export function forecastSide(
  motion: MotionSummary,
  settings: Settings,
  request: SideRequest,
): SideForecast {
  return forecastPlans(motion, settings, request).forecast;
}

/** The same with the plans, for those who draw them. */
export function forecastPlans(
  motion: MotionSummary,
  settings: Settings,
  { levelDb, planner, source, hand, order, ...known }: SideRequest,
): PlannedForecast {
  const side = plannedSide(motion, settings, hand, known.rows);
  const verified = (by: Planner) => verify(side, planSide(side, by, levelDb));
  const { executes } = settings;
  const machine = verified('machine');
  const fixed = verified('fixed');
  const plan = planner === 'machine' ? machine : planner === 'fixed' ? fixed : verified(planner);
  const executed = { machine, fixed, plan }[executes];
  const rows = emptyLevelRows(side);
  const { shares } = rows.trials;
  const findings = allFindings(side, executed, source, shares);
  const forecast = {
    durationSeconds: motion.durationSeconds,
    turns: side.turns,
    levelDb,
    planner,
    executes,
    verdict: verdictOf(findings),
    plan: planReport(side, plan, shares),
    machine: planReport(side, machine, shares),
    fixed: planReport(side, fixed, shares),
    tightest: known.tightest ?? { radiusUsed: leastRadius(side, plan.plan, levelDb, rows.plans) },
    headroom: known.headroom ?? headroom(side, executed.plan.planner, rows),
    headLoad: headLoad(motion, settings, levelDb),
    hotSpots: hotSpots(side, executed.plan),
    findings,
    quarters: quarterColumns(side, plan, machine, fixed, known.memory),
    ...(side.hand.tracks.length === 0
      ? {}
      : { tracks: trackFigures(side, executed.plan, findings) }),
    ...(order === true ? { order: suggestedOrder(side, executed.plan) } : {}),
  };
  return { side, machine, fixed, plan, executed, forecast };
}

/** The tightest plan of a side by itself, for a forecast that is made without it meanwhile. */
export function tightestOf(
  motion: MotionSummary,
  settings: Settings,
  { levelDb, hand, rows }: Pick<SideRequest, 'levelDb' | 'hand' | 'rows'>,
): SideForecast['tightest'] {
  const side = plannedSide(motion, settings, hand, rows);
  return { radiusUsed: radiusUsed(side, planSide(side, 'tightest', levelDb)) };
}

/** What the tightest plan takes; `plan` may be it. @param rows are overwritten */
function leastRadius(side: PlannedSide, plan: Plan, levelDb: number, rows: PlanRows): Metres {
  if (plan.planner === 'tightest') return radiusUsed(side, plan);
  return radiusUsed(side, planPitch(side, 'tightest', 10 ** (levelDb / 20), rows));
}
