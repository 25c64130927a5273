import { BINS_PER_QUARTER, type EdgeWindow, type MotionSummary } from '../analysis/motion.js';
import type { Settings } from '../settings.js';
import { executedPlanner } from './executed-planner.js';
import type { SideForecast } from './forecast-types.js';
import { quartersIn } from './nodes.js';
import { planSide } from './plan.js';
import type { PlannedRows } from './planned-rows.js';
import { plannedSide } from './planned-side.js';
import type { HandSettings } from './side-plan-input.js';
import { survives } from './survives.js';

/** What the forecast was planned with, beyond the settings. */
export interface WayOfCutting {
  readonly hand?: HandSettings;
  /** As of a request; see `SideRequest`. */
  readonly rows?: PlannedRows;
}

/**
 * A forecast whose hot spots have been looked at once more in the audio.
 * @param windows the edges around each hot spot, in order, from `atSeconds` on for the length of a
 *   bin, T/64, at least; null where there is none
 */
export function withSurvival(
  forecast: SideForecast,
  motion: MotionSummary,
  settings: Settings,
  windows: readonly (EdgeWindow | null)[],
  { hand, rows }: WayOfCutting = {},
): SideForecast {
  const side = plannedSide(motion, settings, hand, rows);
  const plan = planSide(side, executedPlanner(settings, forecast.planner), forecast.levelDb);
  const hotSpots = forecast.hotSpots.map((spot, index) => {
    const bin = Math.round(quartersIn(side, spot.atSeconds) * BINS_PER_QUARTER);
    return { ...spot, survives: survives(side, plan, bin, windows[index] ?? null) };
  });
  return { ...forecast, hotSpots };
}
