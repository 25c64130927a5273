import type { MotionSummary } from '../analysis/motion.js';
import type { Planner, Settings } from '../settings.js';
import { pitchPlanner } from './executed-planner.js';
import { allFindings, verdictOf } from './findings/all-findings.js';
import type { SideForecast, SourceFacts } from './forecast-types.js';
import { headLoad } from './head-load.js';
import { hotSpots } from './hot-spots.js';
import { headroom } from './level.js';
import { type PitchPlanner, planSide } from './plan.js';
import { planReport } from './plan-report.js';
import { plannedSide } from './planned-side.js';
import { quarterColumns } from './quarter-columns.js';
import { verify } from './verify.js';

/** What is asked of a side, beyond the profile. */
export interface SideRequest {
  readonly levelDb: number;
  /** Which planner `plan` is. */
  readonly planner: Planner;
  readonly source: SourceFacts;
}

/**
 * Everything the model says of a side, out of its motion summary: plans, land, findings, headroom.
 * Verdict, findings, hot spots and headroom are about the plan that the profile `executes`.
 * @throws RangeError for the planner `tightest`, which needs a solver from outside of the model
 */
export function forecastSide(
  motion: MotionSummary,
  settings: Settings,
  { levelDb, planner, source }: SideRequest,
): SideForecast {
  const side = plannedSide(motion, settings);
  const verified = (by: PitchPlanner) => verify(side, planSide(side, by, levelDb));
  const { executes } = settings;
  const machine = verified('machine');
  const fixed = verified('fixed');
  const shown = pitchPlanner(planner);
  const plan = shown === 'turn-ahead' ? verified(shown) : { machine, fixed }[shown];
  const executed = { machine, fixed, plan }[executes];
  const findings = allFindings(side, executed, source);
  return {
    durationSeconds: motion.durationSeconds,
    turns: side.turns,
    levelDb,
    planner,
    executes,
    verdict: verdictOf(findings),
    plan: planReport(side, plan),
    machine: planReport(side, machine),
    fixed: planReport(side, fixed),
    tightest: null,
    headroom: headroom(side, executed.plan.planner),
    headLoad: headLoad(motion, settings, levelDb),
    hotSpots: hotSpots(side, executed.plan),
    findings,
    quarters: quarterColumns(side, plan, machine),
  };
}
