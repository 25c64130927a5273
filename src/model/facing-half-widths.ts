import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres } from '../units.js';

/**
 * h(t) + h(t − T) at the start of each planned quarter and at the end of the last; linear between.
 * @param before half-width before the planned quarters
 */
export function facingHalfWidths(halfWidth: Float64Array, before: Metres): Float64Array {
  return halfWidth.map((now, node) => {
    const outer = node - QUARTERS_PER_TURN;
    return now + (outer < 0 ? before : halfWidth[outer]!);
  });
}
