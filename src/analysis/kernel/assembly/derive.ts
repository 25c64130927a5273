import { frameAt } from './vector';

/** Moves that velocity and acceleration need, after theirs and before it. */
export const AHEAD: i32 = 4;
export const BEHIND: i32 = 3;

/** 4 pairs for velocity, 3 for acceleration, each in all lanes. */
export const derivativeTaps: usize = memory.data(7 * 16, 16);

/**
 * Velocity of some frames, two at a time.
 * @param from address of the move that is BEHIND the first of them
 * @param count even
 */
export function velocities(from: usize, count: i32, out: usize): void {
  for (let n = 0; n < count; n += 2) v128.store(frameAt(out, n), velocityAt(frameAt(from, n)));
}

/** Acceleration of some frames, as above. */
export function accelerations(from: usize, count: i32, out: usize): void {
  for (let n = 0; n < count; n += 2) v128.store(frameAt(out, n), accelerationAt(frameAt(from, n)));
}

// @ts-ignore: decorator
@inline
function velocityAt(from: usize): v128 {
  return f32x4.add(
    f32x4.add(sum(from, 0, 24, 32), sum(from, 16, 16, 40)),
    f32x4.add(sum(from, 32, 8, 48), sum(from, 48, 0, 56)));
}

// @ts-ignore: decorator
@inline
function accelerationAt(from: usize): v128 {
  return f32x4.add(
    f32x4.add(difference(from, 64, 24, 32), difference(from, 80, 16, 40)),
    difference(from, 96, 8, 48));
}

/** A pair of moves of equal weight. */
// @ts-ignore: decorator
@inline
function sum(from: usize, tap: usize, before: usize, after: usize): v128 {
  return f32x4.mul(
    v128.load(derivativeTaps + tap), f32x4.add(v128.load(from + after), v128.load(from + before)));
}

/** The same of opposite weights. */
// @ts-ignore: decorator
@inline
function difference(from: usize, tap: usize, before: usize, after: usize): v128 {
  return f32x4.mul(
    v128.load(derivativeTaps + tap), f32x4.sub(v128.load(from + after), v128.load(from + before)));
}
