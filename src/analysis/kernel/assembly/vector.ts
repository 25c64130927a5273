// Frames are f64x2: left in lane 0, right in lane 1. Addresses of frames step by 16 bytes.

/** Address of a frame of a buffer. */
// @ts-ignore: decorator
@inline
export function frameAt(buffer: usize, frame: i32): usize {
  return buffer + ((<usize>frame) << 4);
}

/** The same frame with its channels exchanged. */
// @ts-ignore: decorator
@inline
export function exchanged(frame: v128): v128 {
  return v128.shuffle<f64>(frame, frame, 1, 0);
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
