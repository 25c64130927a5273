import { landTolerance } from '../../../../../model/planned-side.js';
import { windowMinimum } from '../../../../../model/planners/window-maximum.js';
import type { Settings } from '../../../../../settings.js';
import type { Groove } from './groove-edges.js';

/**
 * How near the inner edge of the turn outside may come to this one when the lathe is as far off as
 * the profile admits: the least of it within ± speedTolerance·T, less 2·depthTolerance and
 * pitchTolerance; m. What it leaves of this turn's outer edge is the land that findings speak of,
 * to within what the edge's window does not hold near its ends.
 */
export function toleratedEdge(
  outside: Groove,
  settings: Settings,
  turnSeconds: number,
  secondsPerSample: number,
): Float64Array {
  const reach = Math.ceil((settings.speedTolerance * turnSeconds) / secondsPerSample);
  const tolerance = landTolerance(settings);
  const { inner } = outside;
  return inner.map((_, at) => windowMinimum(inner, at - reach, at + reach) - tolerance);
}
