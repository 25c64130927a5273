// Frames are pairs of f32, left and right, 8 bytes apart: a vector of f32x4 holds two frames. What
// needs more than 24 bits is done on one frame as f64x2, left in lane 0, right in lane 1.

/** Address of a frame of a buffer. */
// @ts-ignore: decorator
@inline
export function frameAt(buffer: usize, frame: i32): usize {
  return buffer + ((<usize>frame) << 3);
}

/** Moves some bytes to lower addresses; few, so that a call would cost more. */
export function moveBack(to: usize, from: usize, bytes: i32): void {
  for (let at = 0; at < bytes; at += 16) v128.store(to + at, v128.load(from + at));
}

/** One frame of a buffer as f64x2. */
// @ts-ignore: decorator
@inline
export function wideFrame(address: usize): v128 {
  return f64x2.promote_low_f32x4(v128.load64_zero(address));
}

/** The first of two frames as f64x2. */
// @ts-ignore: decorator
@inline
export function firstOf(pair: v128): v128 {
  return f64x2.promote_low_f32x4(pair);
}

/** The second of two frames as f64x2. */
// @ts-ignore: decorator
@inline
export function secondOf(pair: v128): v128 {
  return f64x2.promote_low_f32x4(v128.shuffle<i64>(pair, pair, 1, 0));
}

/** Two frames of f64x2, rounded, as one vector. */
// @ts-ignore: decorator
@inline
export function pairOf(first: v128, second: v128): v128 {
  return v128.shuffle<i64>(
    f32x4.demote_f64x2_zero(first), f32x4.demote_f64x2_zero(second), 0, 2);
}

/** The same frame of f64x2 with its channels exchanged. */
// @ts-ignore: decorator
@inline
export function exchanged(frame: v128): v128 {
  return v128.shuffle<f64>(frame, frame, 1, 0);
}

/** All bits but signs. V8 would make them anew for each `f32x4.abs`: a loop loads them once. */
export const magnitudeBits: usize = memory.data<u32>(
  [0x7fffffff, 0x7fffffff, 0x7fffffff, 0x7fffffff], 16);

/**
 * Larger of numbers that are not negative, as integers, which are in the same order: what compares
 * floats is what adds them, and mostly busy.
 */
// @ts-ignore: decorator
@inline
export function largerMagnitude(a: v128, b: v128): v128 {
  return i32x4.max_s(a, b);
}

/** Larger of the two frames of a vector, in both. */
// @ts-ignore: decorator
@inline
export function largerFrame(pair: v128): v128 {
  return f32x4.pmax(pair, v128.shuffle<i64>(pair, pair, 1, 0));
}

// @ts-ignore: decorator
@inline
export function left(frame: v128): f64 {
  return f64x2.extract_lane(frame, 0);
}

// @ts-ignore: decorator
@inline
export function right(frame: v128): f64 {
  return f64x2.extract_lane(frame, 1);
}

/** True if a lane of `a` is larger than the same lane of `b`. */
// @ts-ignore: decorator
@inline
export function anyLarger(a: v128, b: v128): bool {
  return v128.any_true(f64x2.gt(a, b));
}

/** Writes two pairs of frames, each of one of the first and one of the second. */
// @ts-ignore: decorator
@inline
export function interleave(target: usize, first: v128, second: v128): void {
  v128.store(target, v128.shuffle<i64>(first, second, 0, 2));
  v128.store(target, v128.shuffle<i64>(first, second, 1, 3), 16);
}
