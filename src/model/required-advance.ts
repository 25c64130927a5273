import { BINS_PER_QUARTER } from '../analysis/motion.js';
import { echoNeighbours, isWithinProgram } from './echo-guard.js';
import { landTolerance, type PlannedSide } from './planned-side.js';

/**
 * The largest advance that each planned quarter needs to keep landMin:
 * R(t) = landMin + pitchTolerance + 2·depthTolerance + h(t − T) + h(t) + g·approachLoose(t).
 * The half-widths are linear inside a bin: both its ends count.
 * @param required becomes the result, m
 * @param facing h(t) + h(t − T) at the quarters' ends, m
 */
export function setRequired(
  required: Float64Array,
  side: PlannedSide,
  facing: Float64Array,
  gain: number,
): void {
  const { approachLoose, count } = side;
  keptLand(side, gain, required);
  for (let quarter = 0; quarter < count; quarter++) {
    const opening = facing[quarter]!;
    const step = (facing[quarter + 1]! - opening) / BINS_PER_QUARTER;
    // The wider end of each bin is its last where the groove opens, else its first.
    let width = opening + Math.max(0, step);
    let largest = Number.NEGATIVE_INFINITY;
    const from = quarter * BINS_PER_QUARTER;
    for (let bin = from; bin < from + BINS_PER_QUARTER; bin++) {
      const need = width + gain * approachLoose[bin]!;
      if (need > largest) largest = need;
      width += step;
    }
    required[quarter] = largest + required[quarter]!;
  }
}

/**
 * What each planned quarter has to keep besides the motion: landMin, pitchTolerance and
 * 2·depthTolerance. Between a quiet and a loud turn of the program echoLand stands in for a smaller
 * landMin.
 * @param kept a row that becomes the result
 */
export function keptLand(
  side: PlannedSide,
  gain: number,
  kept: Float64Array = new Float64Array(side.count),
): Float64Array {
  const { landMin, echoLand } = side.settings;
  const tolerance = landTolerance(side.settings);
  kept.fill(landMin + tolerance);
  // Where it changes nothing it need not be known.
  if (echoLand <= landMin) return kept;
  const neighbours = echoNeighbours(side, gain);
  for (let quarter = 0; quarter < side.count; quarter++) {
    if (neighbours[quarter] === 0 || !isWithinProgram(side, quarter)) continue;
    kept[quarter] = echoLand + tolerance;
  }
  return kept;
}
