import { AHEAD, BEHIND, derivativeTaps } from './derive';
import { movesEnd } from './displace';
import { boundGroup, upAndDown } from './groups';
import { STEP_FRAMES } from './low-band';
import {
  advanceMotion, displacement, displacementMask, motionEnd, moves, movesMask,
} from './rings';
import { frameAt } from './vector';
import { measureStep, stepAccelerations, stepVelocities } from './walls';

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
  const velocity0 = v128.load(derivativeTaps, 0);
  const velocity1 = v128.load(derivativeTaps, 16);
  const velocity2 = v128.load(derivativeTaps, 32);
  const velocity3 = v128.load(derivativeTaps, 48);
  const acceleration0 = v128.load(derivativeTaps, 64);
  const acceleration1 = v128.load(derivativeTaps, 80);
  const acceleration2 = v128.load(derivativeTaps, 96);
  const displacements = frameAt(displacement, first & displacementMask);
  // The frames beside the step, and those next to them, which only make the bounds wider.
  const before = v128.load(frameAt(displacement, (first - 2) & displacementMask));
  const after = v128.load(frameAt(displacements, STEP_FRAMES));
  const run = frameAt(moves, (first - BEHIND) & movesMask);
  const beforeBend = curvatures(frameAt(run, BEHIND - 2));
  const afterBend = curvatures(frameAt(run, BEHIND + STEP_FRAMES));
  let most = f32x4.pmax(before, after);
  let least = f32x4.pmin(before, after);
  let mostBoth = f32x4.pmax(both(before), both(after));
  let leastBoth = f32x4.pmin(both(before), both(after));
  let mostBend = f32x4.pmax(beforeBend, afterBend);
  let leastBend = f32x4.pmin(beforeBend, afterBend);
  for (let n = 0; n < STEP_FRAMES; n += 4) {
    const from = frameAt(run, n);
    const at1 = v128.load(from, 8);
    const at2 = v128.load(from, 16);
    const at3 = v128.load(from, 24);
    const at4 = v128.load(from, 32);
    const at5 = v128.load(from, 40);
    const at6 = v128.load(from, 48);
    const at7 = v128.load(from, 56);
    const near = f32x4.add(
      f32x4.mul(velocity0, f32x4.add(at4, at3)), f32x4.mul(velocity1, f32x4.add(at5, at2)));
    const far = f32x4.add(
      f32x4.mul(velocity2, f32x4.add(at6, at1)),
      f32x4.mul(velocity3, f32x4.add(at7, v128.load(from))));
    v128.store(frameAt(stepVelocities, n), f32x4.add(near, far));
    const bend = f32x4.sub(at4, at3);
    const inner = f32x4.add(
      f32x4.mul(acceleration0, bend), f32x4.mul(acceleration1, f32x4.sub(at5, at2)));
    const rest = f32x4.mul(acceleration2, f32x4.sub(at6, at1));
    v128.store(frameAt(stepAccelerations, n), f32x4.add(inner, rest));
    const at8 = v128.load(from, 64);
    const nextNear = f32x4.add(
      f32x4.mul(velocity0, f32x4.add(at6, at5)), f32x4.mul(velocity1, f32x4.add(at7, at4)));
    const nextFar = f32x4.add(
      f32x4.mul(velocity2, f32x4.add(at8, at3)),
      f32x4.mul(velocity3, f32x4.add(v128.load(from, 72), at2)));
    v128.store(frameAt(stepVelocities, n), f32x4.add(nextNear, nextFar), 16);
    const nextBend = f32x4.sub(at6, at5);
    const nextInner = f32x4.add(
      f32x4.mul(acceleration0, nextBend), f32x4.mul(acceleration1, f32x4.sub(at7, at4)));
    const nextRest = f32x4.mul(acceleration2, f32x4.sub(at8, at3));
    v128.store(frameAt(stepAccelerations, n), f32x4.add(nextInner, nextRest), 16);
    const u = v128.load(frameAt(displacements, n));
    const nextU = v128.load(frameAt(displacements, n), 16);
    const b = both(u);
    const nextB = both(nextU);
    most = f32x4.pmax(most, f32x4.pmax(u, nextU));
    least = f32x4.pmin(least, f32x4.pmin(u, nextU));
    mostBoth = f32x4.pmax(mostBoth, f32x4.pmax(b, nextB));
    leastBoth = f32x4.pmin(leastBoth, f32x4.pmin(b, nextB));
    mostBend = f32x4.pmax(mostBend, f32x4.pmax(bend, nextBend));
    leastBend = f32x4.pmin(leastBend, f32x4.pmin(bend, nextBend));
  }
  const curvature = f32x4.pmax(mostBend, f32x4.neg(leastBend));
  boundGroup(first, upAndDown(most, least), upAndDown(mostBoth, leastBoth), curvature);
}

/** Sum of the walls and left less right, of two frames. */
// @ts-ignore: decorator
@inline
function both(pair: v128): v128 {
  const signs = f32x4(0, -0.0, 0, -0.0);
  return f32x4.add(v128.shuffle<i32>(pair, pair, 1, 0, 3, 2), v128.xor(pair, signs));
}

/** Curvature of two frames but for its sign, from the first of their moves. */
// @ts-ignore: decorator
@inline
function curvatures(from: usize): v128 {
  return f32x4.sub(v128.load(from, 8), v128.load(from));
}
