import { findingChanges } from './compare-findings.js';
import { landChanges } from './compare-land.js';
import { DIAMETER_MATTERS, LEVEL_MATTERS, TIME_MATTERS } from './compare-margins.js';
import { programShift } from './compare-shift.js';
import type { Change, ComparedSide, Comparison } from './compare-types.js';
import type { PlanReport, SideForecast } from './forecast-types.js';

/**
 * What matters of the differences between two forecasts under the same settings: of the plan that
 * the profile executes. Times are compared after a shift of the whole program; of programs that are
 * not alike, as they stand.
 */
export function compareForecasts(before: ComparedSide, after: ComparedSide): Comparison {
  const offset = programShift(before, after);
  const [was, is] = [before.forecast, after.forecast];
  const [planWas, planIs] = [executedPlan(was), executedPlan(is)];
  const turn = 60 / after.settings.rpm;
  // A recommended level is a step of the level control: any other one is another.
  const anyStep = after.settings.levelStep / 2;
  return {
    name: before.name,
    offsetSeconds: offset,
    verdict: { before: was.verdict, after: is.verdict },
    durationSeconds: changed(was.durationSeconds, is.durationSeconds, TIME_MATTERS),
    loudnessLufs: changed(before.program.loudnessLufs, after.program.loudnessLufs, LEVEL_MATTERS),
    endDiameter: changed(planWas.endDiameter, planIs.endDiameter, DIAMETER_MATTERS),
    // A radius: half of what makes a diameter another.
    spare: changed(planWas.spare, planIs.spare, DIAMETER_MATTERS / 2),
    recommendedDb: changed(was.headroom.recommendedDb, is.headroom.recommendedDb, anyStep),
    fillDb: changed(was.headroom.fillDb, is.headroom.fillDb, LEVEL_MATTERS),
    traceDb: changed(was.headroom.traceDb, is.headroom.traceDb, LEVEL_MATTERS),
    land: landChanges(before, after, offset ?? 0),
    findings: findingChanges(was.findings, is.findings, offset ?? 0, turn),
  };
}

/** Whether two forecasts say the same in all that matters, at the same time. */
export function isUnchanged(comparison: Comparison): boolean {
  const { name: _, offsetSeconds, verdict, land, findings, ...figures } = comparison;
  return (
    offsetSeconds === 0 &&
    verdict.before === verdict.after &&
    land.length === 0 &&
    findings.length === 0 &&
    Object.values(figures).every((figure) => figure === null)
  );
}

function executedPlan(forecast: SideForecast): PlanReport {
  return forecast[forecast.executes];
}

/** A change by at least the margin, or to or from no value. */
function changed<Value extends number | null>(
  before: Value,
  after: Value,
  margin: number,
): Change<Value> | null {
  if (before === null || after === null) return before === after ? null : { before, after };
  // Rounding must not hide a change by just the margin.
  return Math.abs(after - before) >= margin - 1e-9 * Math.abs(before) ? { before, after } : null;
}
