import { AHEAD, derivativeTaps } from './derive';
import { both, extremesOf, movesEnd } from './displace';
import { boundGroup, upAndDown } from './groups';
import { STEP_FRAMES } from './low-band';
import {
  advanceMotion, displacement, displacementMask, evenMoves, leadFrames, motionEnd, movesMask, oddMoves,
} from './rings';
import { frameAt, largerFrame } from './vector';
import { boundPeaks } from './wall-peaks';
import { COUNTED, measureStep, stepAccelerations, stepVelocities } from './walls';

/**
 * Makes velocity, acceleration and bounds of all steps whose moves are there, and a step more, which
 * the peaks of a quarter need that ends with the step.
 */
export function differentiate(): void {
  while (motionEnd + 2 * STEP_FRAMES + AHEAD <= movesEnd) {
    const counted = firstCounted(motionEnd);
    differentiateStep(motionEnd, counted);
    measureStep(motionEnd, counted);
    advanceMotion(STEP_FRAMES);
  }
}

/** Frames of the program of which the even ones are counted, and as many of which the odd ones are. */
const COUNTED_ALIKE: i32 = 2048;

/** The first frame of a step that is counted; then every other one is. */
function firstCounted(first: i32): i32 {
  return first + (((first - leadFrames) / COUNTED_ALIKE) & 1);
}

/** Velocity and acceleration of every other frame, and the bounds of all. */
function differentiateStep(first: i32, counted: i32): void {
  const velocity0 = v128.load(derivativeTaps, 0);
  const velocity1 = v128.load(derivativeTaps, 16);
  const velocity2 = v128.load(derivativeTaps, 32);
  const velocity3 = v128.load(derivativeTaps, 48);
  const acceleration0 = v128.load(derivativeTaps, 64);
  const acceleration1 = v128.load(derivativeTaps, 80);
  const acceleration2 = v128.load(derivativeTaps, 96);
  const at = ((first >> 1) - 2) & movesMask;
  const isOdd = counted != first;
  // The moves to the frames, and to those after them, from two frames before on.
  const to = frameAt(isOdd ? oddMoves : evenMoves, at);
  const after = isOdd ? frameAt(evenMoves, at + 1) : frameAt(oddMoves, at);
  for (let n = 0; n < COUNTED; n += 2) {
    const x = frameAt(after, n);
    const y = frameAt(to, n);
    const x2 = v128.load(x);
    const x1 = v128.load(x, 8);
    const at4 = v128.load(x, 16);
    const at6 = v128.load(x, 24);
    const at1 = v128.load(y, 8);
    const at3 = v128.load(y, 16);
    const at5 = v128.load(y, 24);
    const at7 = v128.load(y, 32);
    const near = f32x4.add(
      f32x4.mul(velocity0, f32x4.add(at4, at3)), f32x4.mul(velocity1, f32x4.add(at5, x1)));
    const far = f32x4.add(
      f32x4.mul(velocity2, f32x4.add(at6, at1)), f32x4.mul(velocity3, f32x4.add(at7, x2)));
    v128.store(frameAt(stepVelocities, n), f32x4.add(near, far));
    const bend = f32x4.sub(at4, at3);
    const inner = f32x4.add(
      f32x4.mul(acceleration0, bend), f32x4.mul(acceleration1, f32x4.sub(at5, x1)));
    const rest = f32x4.mul(acceleration2, f32x4.sub(at6, at1));
    v128.store(frameAt(stepAccelerations, n), f32x4.add(inner, rest));
  }
  boundStep(first, to, after);
}

/**
 * Bounds what a step holds by its moves and by how much they differ from their last, which is the
 * curvature but for its sign; those beside it only make the bounds wider. A loop of its own, since
 * with the taps in it what it adds up would be kept in memory.
 */
function boundStep(first: i32, to: usize, after: usize): void {
  let moved = f32x4.splat(0);
  let bent = moved;
  for (let n = 0; n < COUNTED + 4; n += 2) {
    const here = v128.load(frameAt(to, n));
    const next = v128.load(frameAt(after, n));
    const bend = f32x4.sub(next, here);
    const nextBend = f32x4.sub(v128.load(frameAt(to, n), 8), next);
    moved = f32x4.pmax(moved, f32x4.pmax(f32x4.mul(here, here), f32x4.mul(next, next)));
    bent = f32x4.pmax(bent, f32x4.pmax(f32x4.mul(bend, bend), f32x4.mul(nextBend, nextBend)));
  }
  boundPeaks(first, f32x4.sqrt(largerFrame(moved)), f32x4.sqrt(largerFrame(bent)));
  boundDisplacement(first, f32x4.sqrt(bent));
}

/** Bounds the displacement of a step, the frames beside it among it. */
function boundDisplacement(first: i32, curvature: v128): void {
  // Those next to them only make the bounds wider.
  const before = v128.load(frameAt(displacement, (first - 2) & displacementMask));
  const after = v128.load(frameAt(displacement, (first & displacementMask) + STEP_FRAMES));
  const extremes = extremesOf(first);
  const most = f32x4.pmax(v128.load(extremes), f32x4.pmax(before, after));
  const least = f32x4.pmin(v128.load(extremes, 16), f32x4.pmin(before, after));
  const mostBoth = f32x4.pmax(v128.load(extremes, 32), f32x4.pmax(both(before), both(after)));
  const leastBoth = f32x4.pmin(v128.load(extremes, 48), f32x4.pmin(both(before), both(after)));
  boundGroup(first, upAndDown(most, least), upAndDown(mostBoth, leastBoth), curvature);
}
