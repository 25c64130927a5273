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

/** @returns the largest curvature of the displacement, 2u(n) − u(n−1) − u(n+1), of even and odd frames */
function differentiateStep(first: i32): v128 {
  const velocityOut = frameAt(velocity, motionEnd & wallMask);
  const accelerationOut = frameAt(acceleration, motionEnd & wallMask);
  let curvature = f32x4.splat(0);
  for (let n = 0; n < STEP_FRAMES; n += 2) {
    const at = frameAt(moves, first + n);
    const before0 = v128.load(at);
    const after0 = v128.load(at, 8);
    const before1 = v128.load(at - 8);
    const after1 = v128.load(at, 16);
    const before2 = v128.load(at - 16);
    const after2 = v128.load(at, 24);
    const outer = f32x4.add(v128.load(at, 32), v128.load(at - 24));
    v128.store(
      frameAt(velocityOut, n),
      f32x4.add(
        f32x4.add(
          tapped(f32x4.add(after0, before0), 0), tapped(f32x4.add(after1, before1), 16)),
        f32x4.add(tapped(f32x4.add(after2, before2), 32), tapped(outer, 48))));
    const bend = f32x4.sub(after0, before0);
    v128.store(
      frameAt(accelerationOut, n),
      f32x4.add(
        f32x4.add(tapped(bend, 64), tapped(f32x4.sub(after1, before1), 80)),
        tapped(f32x4.sub(after2, before2), 96)));
    curvature = f32x4.pmax(curvature, f32x4.abs(bend));
  }
  return curvature;
}

// @ts-ignore: decorator
@inline
function tapped(pair: v128, tap: usize): v128 {
  return f32x4.mul(v128.load(derivativeTaps + tap), pair);
}
