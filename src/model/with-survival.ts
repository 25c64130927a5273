import { BINS_PER_QUARTER, type EdgeWindow } from '../analysis/motion.js';
import type { PlannedForecast } from './forecast-model.js';
import type { SideForecast } from './forecast-types.js';
import { quartersIn } from './nodes.js';
import { survives } from './survives.js';

/**
 * A forecast whose hot spots have been looked at once more in the audio.
 * @param windows the edges around each hot spot, in order, from `atSeconds` on for the length of a
 *   bin, T/64, at least; null where there is none
 */
export function withSurvival(
  { forecast, side, executed }: PlannedForecast,
  windows: readonly (EdgeWindow | null)[],
): SideForecast {
  const hotSpots = forecast.hotSpots.map((spot, index) => {
    const bin = Math.round(quartersIn(side, spot.atSeconds) * BINS_PER_QUARTER);
    return { ...spot, survives: survives(side, executed.plan, bin, windows[index] ?? null) };
  });
  return { ...forecast, hotSpots };
}
