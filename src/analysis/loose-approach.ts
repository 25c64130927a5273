import {
  climb,
  type Frames,
  isLocalMaximum,
  maximumBetween,
  PEAK_STEP,
  valueAt,
} from './interpolate.js';

/** The two walls that face each other across the land, and how far apart in time they may be. */
export interface FacingWalls {
  /** u_R by frame. */
  readonly outer: Frames;
  /** u_L by frame, not yet delayed. */
  readonly inner: Frames;
  /** One turn, frames. */
  readonly turn: number;
  /** speedTolerance·T, frames. */
  readonly slack: number;
}

/** u_R(t) − min over |δ| ≤ slack of u_L(t − T + δ), at a place in frames. */
export function looseApproachAt(walls: FacingWalls, place: number): number {
  const { outer, inner, turn, slack } = walls;
  const facing = place - turn;
  const negated: Frames = (frame) => -inner(frame);
  return valueAt(outer, place) + maximumBetween(negated, facing - slack, facing + slack);
}

/**
 * Largest loose approach between two places. Between frames it is looked for around the local
 * maxima of its value from frames alone, which the sliding minimum makes cheap to find.
 * @param fromFrames u_R(n) less the least frame of u_L in the window of n, by frame
 */
export function looseMaximumBetween(
  walls: FacingWalls,
  fromFrames: Frames,
  from: number,
  until: number,
): number {
  let largest = Math.max(looseApproachAt(walls, from), looseApproachAt(walls, until));
  for (let frame = Math.ceil(from); frame < until; frame++) {
    if (!isLocalMaximum(fromFrames, frame)) continue;
    const peak = climb((eighths) => looseApproachAt(walls, frame + eighths / PEAK_STEP));
    largest = Math.max(largest, peak);
  }
  return largest;
}

/** The loose approach from frames alone: what looseMaximumBetween looks for peaks in. */
export function looseFromFrames(walls: FacingWalls): Frames {
  const { outer, inner, turn, slack } = walls;
  return (frame) => {
    let least = Number.POSITIVE_INFINITY;
    const last = Math.ceil(frame - turn + slack);
    for (let facing = Math.floor(frame - turn - slack); facing <= last; facing++) {
      least = Math.min(least, inner(facing));
    }
    return outer(frame) - least;
  };
}
