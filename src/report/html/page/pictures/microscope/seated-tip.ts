import { contactDepth } from '../../../../../model/groove.js';

/** A playback sphere in a groove, seen along it; m, z positive up out of the disc. */
export interface SeatedTip {
  /** Height of its centre. */
  readonly centre: number;
  /** Depth at which it touches the walls, positive down; 0 where it lies on the edges. */
  readonly contact: number;
  /** How far from the groove's middle it touches. */
  readonly reach: number;
}

/**
 * A sphere in a 90° V touches both walls where they are tangent to it, R/√2 from the middle and
 * w/2 − R/√2 deep; its centre lies √2·R over the apex. In a groove too narrow for that it lies on
 * the two edges. null for a groove that is not there.
 * @param width of the groove at the surface, m
 * @param radius of the sphere, m
 */
export function seatedTip(width: number, radius: number): SeatedTip | null {
  if (!(width > 0)) return null;
  const contact = contactDepth(width, radius);
  if (contact >= 0) {
    return { centre: Math.SQRT2 * radius - width / 2, contact, reach: radius / Math.SQRT2 };
  }
  return { centre: Math.sqrt(radius ** 2 - (width / 2) ** 2), contact: 0, reach: width / 2 };
}
