import { AHEAD, derivativeTaps } from './derive';
import { both, extremesOf, movesEnd, rightTurned } from './displace';
import { boundGroup, upAndDown } from './groups';
import { STEP_FRAMES } from './low-band';
import {
  advanceMotion, displacement, displacementMask, evenMoves, motionEnd, movesMask, oddMoves,
} from './rings';
import { frameAt, largerFrame, largerMagnitude, magnitudeBits } from './vector';
import { HALF_STEP, measureStep, stepAccelerations, stepVelocities } from './walls';

/** Where the odd frames of a step lie behind its even ones. */
const ODD_BYTES: usize = HALF_STEP * 8;

/**
 * Makes velocity, acceleration and bounds of all steps whose moves are there, and a step more, which
 * the peaks of a quarter need that ends with the step.
 */
export function differentiate(): void {
  while (motionEnd + 2 * STEP_FRAMES + AHEAD <= movesEnd) {
    differentiateStep(motionEnd);
    measureStep(motionEnd);
    advanceMotion(STEP_FRAMES);
  }
}

function differentiateStep(first: i32): void {
  const at = ((first >> 1) - 2) & movesMask;
  const evens = frameAt(evenMoves, at);
  const odds = frameAt(oddMoves, at);
  differentiateFrames(evens, odds);
  boundDisplacement(first, largestBends(evens, odds));
}

/**
 * Velocity and acceleration of the even and of the odd frames of a step, which share all moves but
 * two. The taps are loaded in each round: there are fewer registers than moves and taps.
 * @param evens the moves to the even frames, from two of them before the step on
 * @param odds the moves to the frames after these
 */
function differentiateFrames(evens: usize, odds: usize): void {
  for (let n = 0; n < HALF_STEP; n += 2) {
    const even = frameAt(evens, n);
    const odd = frameAt(odds, n);
    const at0 = v128.load(odd);
    const at1 = v128.load(even, 8);
    const at2 = v128.load(odd, 8);
    const at3 = v128.load(even, 16);
    const at4 = v128.load(odd, 16);
    const at5 = v128.load(even, 24);
    const at6 = v128.load(odd, 24);
    const at7 = v128.load(even, 32);
    const at8 = v128.load(odd, 32);
    const velocities = frameAt(stepVelocities, n);
    const near = v128.load(derivativeTaps, 0);
    const second = v128.load(derivativeTaps, 16);
    const third = v128.load(derivativeTaps, 32);
    const far = v128.load(derivativeTaps, 48);
    v128.store(velocities, f32x4.add(
      f32x4.add(f32x4.mul(near, f32x4.add(at4, at3)), f32x4.mul(second, f32x4.add(at5, at2))),
      f32x4.add(f32x4.mul(third, f32x4.add(at6, at1)), f32x4.mul(far, f32x4.add(at7, at0)))));
    v128.store(velocities, f32x4.add(
      f32x4.add(f32x4.mul(near, f32x4.add(at5, at4)), f32x4.mul(second, f32x4.add(at6, at3))),
      f32x4.add(f32x4.mul(third, f32x4.add(at7, at2)), f32x4.mul(far, f32x4.add(at8, at1)))),
      ODD_BYTES);
    const accelerations = frameAt(stepAccelerations, n);
    const bend = v128.load(derivativeTaps, 64);
    const secondBend = v128.load(derivativeTaps, 80);
    const thirdBend = v128.load(derivativeTaps, 96);
    v128.store(accelerations, f32x4.add(
      f32x4.add(
        f32x4.mul(bend, f32x4.sub(at4, at3)), f32x4.mul(secondBend, f32x4.sub(at5, at2))),
      f32x4.mul(thirdBend, f32x4.sub(at6, at1))));
    v128.store(accelerations, f32x4.add(
      f32x4.add(
        f32x4.mul(bend, f32x4.sub(at5, at4)), f32x4.mul(secondBend, f32x4.sub(at6, at3))),
      f32x4.mul(thirdBend, f32x4.sub(at7, at2))), ODD_BYTES);
  }
}

/**
 * The largest curvature of a step and of the frames beside it, and those next to them, which only
 * make the bounds wider: how much a move differs from the last. A loop of its own, since with the
 * taps in it the largest would be kept in memory.
 */
function largestBends(evens: usize, odds: usize): v128 {
  const bits = v128.load(magnitudeBits);
  let most = f32x4.splat(0);
  for (let n = 0; n < HALF_STEP + 4; n += 2) {
    const here = v128.load(frameAt(evens, n));
    const next = v128.load(frameAt(odds, n));
    const bend = f32x4.sub(next, here);
    const nextBend = f32x4.sub(v128.load(frameAt(evens, n), 8), next);
    const larger = largerMagnitude(v128.and(bend, bits), v128.and(nextBend, bits));
    most = largerMagnitude(most, larger);
  }
  return most;
}

/** Bounds the displacement of a step, the frames beside it among it. */
function boundDisplacement(first: i32, curvature: v128): void {
  // Those next to them only make the bounds wider.
  const before = v128.load(frameAt(displacement, (first - 2) & displacementMask));
  const after = v128.load(frameAt(displacement, (first & displacementMask) + STEP_FRAMES));
  const extremes = extremesOf(first);
  const turned = rightTurned(before);
  const nextTurned = rightTurned(after);
  const b = both(before, turned);
  const nextB = both(after, nextTurned);
  const least = f32x4.pmin(v128.load(extremes), f32x4.pmin(turned, nextTurned));
  const mostBoth = f32x4.pmax(v128.load(extremes, 16), f32x4.pmax(b, nextB));
  const leastBoth = f32x4.pmin(v128.load(extremes, 32), f32x4.pmin(b, nextB));
  boundGroup(first, largerFrame(f32x4.neg(least)), upAndDown(mostBoth, leastBoth), curvature);
}
