import type { PlannedSide } from '../planned-side.js';
import { boundaryNeeds } from './boundary-needs.js';
import { spacingProgram } from './spacing-program.js';

/**
 * The pitch that takes the least radius of all that keep landMin when executed up to c quarters
 * early or late, under the same limits and ends as `turn-ahead`: the floor for the other planners.
 * @param facing h(t) + h(t − T) at the quarters' ends, m
 * @returns per planned quarter, m per turn, at most pitchMax
 * @throws RangeError for a side without a solver
 */
export function tightest(side: PlannedSide, facing: Float64Array, gain: number): Float64Array {
  const { solve, settings, basePitch } = side;
  if (solve === null) throw new RangeError('the planner tightest needs a solver');
  const { x } = solve(spacingProgram(side, boundaryNeeds(side, facing, gain)));
  // A solver keeps bounds to a tolerance.
  return x.map((pitch, quarter) => Math.max(pitch * settings.basePitch, basePitch[quarter]!));
}
