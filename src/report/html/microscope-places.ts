import type { MotionSummary } from '../../analysis/motion.js';
import type { ForecastedFile } from '../../forecast-result.js';
import { executedPlanner } from '../../model/executed-planner.js';
import { hotSpots } from '../../model/hot-spots.js';
import { planSide } from '../../model/plan.js';
import { plannedSide } from '../../model/planned-side.js';
import { NOTHING_BY_HAND } from '../../model/side-plan-input.js';
import type { Seconds } from '../../units.js';

/** Places that are kept: each takes about 20 kB of a page. */
const MOST = 10;
/** By how much the level is tried down, dB: about what a side that does not hold needs. */
const QUIETER_DB = -3;

/**
 * The places whose edges a page keeps: the hot spots of the forecast, and as far as there is room
 * those that are likely to be asked for next, of a quieter cut and of the plan.
 * @returns program times of bins, each once, the forecast's own first and in their order
 */
export function microscopePlaces(
  file: ForecastedFile & { readonly motion: MotionSummary },
): { readonly atSeconds: Seconds }[] {
  const { motion, settings, forecast } = file;
  const side = plannedSide(motion, settings, file.hand ?? NOTHING_BY_HAND);
  const { planner } = forecast;
  const executed = executedPlanner(settings, planner);
  const quieter = hotSpots(side, planSide(side, executed, forecast.levelDb + QUIETER_DB));
  const planned = hotSpots(side, planSide(side, planner, forecast.levelDb));
  const inTurns = quieter.flatMap((spot, at) => [spot, ...planned.slice(at, at + 1)]);
  const places = [...forecast.hotSpots, ...inTurns, ...planned].map(({ atSeconds }) => atSeconds);
  return [...new Set(places)].slice(0, MOST).map((atSeconds) => ({ atSeconds }));
}
