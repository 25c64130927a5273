import { type Frames, maximumBetween, peaksBetween, valueAt } from './interpolate.js';

/** The two walls that face each other across the land, and how far apart in time they may be. */
export interface FacingWalls {
  /** u_R by frame. */
  readonly outer: Frames;
  /** −u_L by frame, not yet delayed. */
  readonly inner: Frames;
  /** One turn, frames. */
  readonly turn: number;
  /** speedTolerance·T, frames. */
  readonly slack: number;
  /** u_R(t) − u_L(t − T − slack) and u_R(t) − u_L(t − T + slack), by frame. */
  readonly earliest: Frames;
  readonly latest: Frames;
}

/**
 * Largest u_R(t) − u_L(t − T + δ) over |δ| ≤ slack and t between two places, in frames.
 * @param approach the same at δ = 0, which it is never under
 * Where it is largest, either δ is at one of its ends, and the two closings at a fixed delay hold
 * it, or u_L has a trough there and u_R a peak or an end of the span.
 */
export function looseMaximumBetween(
  walls: FacingWalls,
  from: number,
  until: number,
  approach: number,
): number {
  const { outer, earliest, latest } = walls;
  let largest = Math.max(
    approach,
    maximumBetween(earliest, from, until),
    maximumBetween(latest, from, until),
    valueAt(outer, from) + innerMaximum(walls, from),
    valueAt(outer, until) + innerMaximum(walls, until),
  );
  for (const { value, place } of peaksBetween(outer, from, until)) {
    largest = Math.max(largest, value + innerMaximum(walls, place));
  }
  return largest;
}

/** max of −u_L over the window that faces a place. */
function innerMaximum({ inner, turn, slack }: FacingWalls, place: number): number {
  return maximumBetween(inner, place - turn - slack, place - turn + slack);
}
