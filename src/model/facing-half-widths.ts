import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres } from '../units.js';

/**
 * h(t) + h(t − T) at the start of each planned quarter and at the end of the last; linear between.
 * @param before half-width before the planned quarters
 * @param facing another row as long, which becomes the result
 */
export function facingHalfWidths(
  halfWidth: Float64Array,
  before: Metres,
  facing: Float64Array = new Float64Array(halfWidth.length),
): Float64Array {
  for (let node = 0; node < facing.length; node++) {
    const outer = node - QUARTERS_PER_TURN;
    facing[node] = halfWidth[node]! + (outer < 0 ? before : halfWidth[outer]!);
  }
  return facing;
}
