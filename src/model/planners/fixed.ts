import type { PlannedSide } from '../planned-side.js';

/** Base pitch throughout. */
export function fixedPitch({ count, settings }: PlannedSide): Float64Array {
  return new Float64Array(count).fill(settings.basePitch);
}
