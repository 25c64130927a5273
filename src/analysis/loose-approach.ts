import {
  type Frames,
  isLocalMaximum,
  maximumBetween,
  PEAK_STEP,
  valueAt,
  vertex,
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

/** The two parts of a loose approach: u_R(t), and max over |δ| ≤ slack of −u_L(t − T + δ). */
interface Parts {
  readonly outer: number;
  readonly inner: number;
  readonly sum: number;
}

function partsAt(walls: FacingWalls, place: number): Parts {
  const facing = place - walls.turn;
  const negated: Frames = (frame) => -walls.inner(frame);
  const outer = valueAt(walls.outer, place);
  const inner = maximumBetween(negated, facing - walls.slack, facing + walls.slack);
  return { outer, inner, sum: outer + inner };
}

/** u_R(t) − min over |δ| ≤ slack of u_L(t − T + δ), at a place in frames. */
export function looseApproachAt(walls: FacingWalls, place: number): number {
  return partsAt(walls, place).sum;
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
    if (isLocalMaximum(fromFrames, frame)) largest = Math.max(largest, climbLoose(walls, frame));
  }
  return largest;
}

/**
 * The peak next to a frame, climbed in eighths of a frame. The parabola is laid through u_R alone:
 * where another trough enters the window the inner part has a kink, over which it would overshoot.
 */
function climbLoose(walls: FacingWalls, frame: number): number {
  const at = (eighths: number): Parts => partsAt(walls, frame + eighths / PEAK_STEP);
  let [best, ahead, behind] = [at(0), at(1), at(-1)];
  const step = ahead.sum > behind.sum ? 1 : -1;
  if (step < 0) [ahead, behind] = [behind, ahead];
  for (let eighths = step; ahead.sum > best.sum && Math.abs(eighths) < PEAK_STEP; eighths += step) {
    [behind, best, ahead] = [best, ahead, at(eighths + step)];
  }
  const onTop = best.outer >= ahead.outer && best.outer >= behind.outer;
  return onTop ? vertex(behind.outer, best.outer, ahead.outer) + best.inner : best.sum;
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
