import type { Metres } from '../units.js';

/**
 * Cut depth of a groove of a top width: w/2 − (√2 − 1)·ρ, as a tip of bottom radius ρ stays above
 * the apex of the 90° V. Signed: negative where the cutter has left the lacquer.
 * Source: geometry of the V (90°: IEC 98, from memory).
 */
export function cutDepth(width: Metres, bottomRadius: Metres): Metres {
  return width / 2 - (Math.SQRT2 - 1) * bottomRadius;
}

/** The half-width of a groove whose cut is `depth` deep: the inverse of cutDepth. */
export function halfWidthAt(depth: Metres, bottomRadius: Metres): Metres {
  return depth + (Math.SQRT2 - 1) * bottomRadius;
}

/**
 * Depth under the surface at which a playback sphere touches the walls: w/2 − R/√2.
 * At 0 or less it lies on the edges of the groove.
 */
export function contactDepth(width: Metres, tipRadius: Metres): Metres {
  return width / 2 - tipRadius / Math.SQRT2;
}

/** Depth under the surface at which two neighbouring 45° walls meet: |land|/2; 0 with land left. */
export function overcutDepth(land: Metres): Metres {
  return Math.max(0, -land / 2);
}
