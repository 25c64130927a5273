import { keepLastMoves, moves, movesWaiting } from './displace';
import { boundGroup } from './groups';
import { STEP_FRAMES } from './low-band';
import { acceleration, advanceMotion, mirrorStep, motionEnd, velocity, wallMask } from './rings';
import { frameAt } from './vector';

/** Moves that velocity and acceleration need, after theirs and before it. */
const AHEAD: i32 = 4;
const BEHIND: i32 = 3;

/** 4 pairs for velocity, 3 for acceleration, each in all lanes. */
export const derivativeTaps: usize = memory.data(7 * 16, 16);

/** Makes velocity, acceleration and bounds of all steps whose moves are there. */
export function differentiate(): void {
  let first = BEHIND;
  for (; first + STEP_FRAMES + AHEAD <= movesWaiting; first += STEP_FRAMES) {
    boundGroup(motionEnd, differentiateStep(first));
    mirrorStep(velocity, wallMask, motionEnd);
    mirrorStep(acceleration, wallMask, motionEnd);
    advanceMotion(STEP_FRAMES);
  }
  keepLastMoves(movesWaiting - first + BEHIND);
}

/**
 * @returns the largest curvature of the displacement, 2u(n) − u(n−1) − u(n+1), of the frames and those
 * beside them, even and odd ones apart
 */
function differentiateStep(first: i32): v128 {
  const velocityOut = frameAt(velocity, motionEnd & wallMask);
  const accelerationOut = frameAt(acceleration, motionEnd & wallMask);
  const velocity0 = v128.load(derivativeTaps, 0);
  const velocity1 = v128.load(derivativeTaps, 16);
  const velocity2 = v128.load(derivativeTaps, 32);
  const velocity3 = v128.load(derivativeTaps, 48);
  const acceleration0 = v128.load(derivativeTaps, 64);
  const acceleration1 = v128.load(derivativeTaps, 80);
  const acceleration2 = v128.load(derivativeTaps, 96);
  const before = curvatures(first - 2);
  const after = curvatures(first + STEP_FRAMES);
  let most = f32x4.pmax(before, after);
  let least = f32x4.pmin(before, after);
  for (let n = 0; n < STEP_FRAMES; n += 2) {
    const from = frameAt(moves, first + n - BEHIND);
    const before0 = v128.load(from, 24);
    const after0 = v128.load(from, 32);
    const before1 = v128.load(from, 16);
    const after1 = v128.load(from, 40);
    const before2 = v128.load(from, 8);
    const after2 = v128.load(from, 48);
    const outer = f32x4.add(v128.load(from, 56), v128.load(from));
    const near = f32x4.add(
      f32x4.mul(velocity0, f32x4.add(after0, before0)),
      f32x4.mul(velocity1, f32x4.add(after1, before1)));
    const far = f32x4.add(
      f32x4.mul(velocity2, f32x4.add(after2, before2)), f32x4.mul(velocity3, outer));
    v128.store(frameAt(velocityOut, n), f32x4.add(near, far));
    const bend = f32x4.sub(after0, before0);
    const inner = f32x4.add(
      f32x4.mul(acceleration0, bend), f32x4.mul(acceleration1, f32x4.sub(after1, before1)));
    const rest = f32x4.mul(acceleration2, f32x4.sub(after2, before2));
    v128.store(frameAt(accelerationOut, n), f32x4.add(inner, rest));
    most = f32x4.pmax(most, bend);
    least = f32x4.pmin(least, bend);
  }
  return f32x4.pmax(most, f32x4.neg(least));
}

/** Curvature of two frames but for its sign. */
// @ts-ignore: decorator
@inline
function curvatures(first: i32): v128 {
  const from = frameAt(moves, first);
  return f32x4.sub(v128.load(from, 8), v128.load(from));
}
