import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres } from '../units.js';

/**
 * h(t) + h(t − T) at the start of each planned quarter and at the end of the last; linear between.
 * @param before half-width before the planned quarters
 */
export function facingHalfWidths(halfWidth: Float64Array, before: Metres): Float64Array {
  const facing = new Float64Array(halfWidth.length);
  for (let node = 0; node < facing.length; node++) {
    const outer = node - QUARTERS_PER_TURN;
    facing[node] = halfWidth[node]! + (outer < 0 ? before : halfWidth[outer]!);
  }
  return facing;
}
