import { interiorPoint } from '../linear/interior-point.js';
import type { PlannedSide } from '../planned-side.js';
import { boundaryNeeds } from './boundary-needs.js';
import { keepsLimits, likelyLimits } from './pitch-limits.js';
import { spacingProgram } from './spacing-program.js';

/** What lies nearer to its least than this, of the base pitch, is meant to be there. */
const SAME = 1e-9;

/**
 * The pitch that takes the least radius of all that keep landMin when executed up to c quarters
 * early or late, under the same limits and ends as `turn-ahead`: the floor for the other planners.
 * @param facing h(t) + h(t − T) at the quarters' ends, m
 * @param pitch becomes that of each planned quarter, m per turn, at most pitchMax
 */
export function tightest(
  side: PlannedSide,
  facing: Float64Array,
  gain: number,
  pitch: Float64Array,
): void {
  const { settings, basePitch } = side;
  const shares = tightestShares(side, boundaryNeeds(side, facing, gain));
  for (let quarter = 0; quarter < pitch.length; quarter++) {
    const least = basePitch[quarter]!;
    const found = shares[quarter]! * settings.basePitch;
    pitch[quarter] = found - least > SAME * settings.basePitch ? found : least;
  }
}

/** The optimum under a part of the limits that keeps all of them is the optimum under all. */
function tightestShares(side: PlannedSide, needs: Float64Array): Float64Array {
  const { x } = interiorPoint(spacingProgram(side, needs, likelyLimits));
  return keepsLimits(side, x) ? x : interiorPoint(spacingProgram(side, needs)).x;
}
