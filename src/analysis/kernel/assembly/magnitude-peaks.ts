import { RIPPLE, SKEW_SHARE } from './interpolate';
import { pairOf } from './vector';

// Which frames, two to a vector, may have a peak of the magnitude next to them.

/** What neither of two frames is higher than, nor a peak next to one that is a local maximum. */
export function boundsAt(frame: usize): v128 {
  const sooner = v128.load(frame - 16);
  const before = v128.load(frame - 8);
  const at = v128.load(frame);
  const after = v128.load(frame, 8);
  const later = v128.load(frame, 16);
  const early = f32x4.pmax(
    skewOf(v128.load(frame - 24), sooner, before, at), skewOf(sooner, before, at, after));
  const late = f32x4.pmax(
    skewOf(before, at, after, later), skewOf(at, after, later, v128.load(frame, 24)));
  const skew = f32x4.mul(f32x4.splat(<f32>SKEW_SHARE), f32x4.pmax(early, late));
  const slope = f32x4.mul(f32x4.splat(0.125), f32x4.abs(f32x4.sub(after, before)));
  // Twice the ripple: what is rounded here is less than that.
  const height = f32x4.mul(f32x4.splat(<f32>(1 + 2 * RIPPLE)), f32x4.abs(at));
  return f32x4.add(height, f32x4.add(slope, skew));
}

/** By how much the curvatures at the second and the third of four numbers differ. */
// @ts-ignore: decorator
@inline
function skewOf(first: v128, second: v128, third: v128, last: v128): v128 {
  const inner = f32x4.mul(f32x4.splat(3), f32x4.sub(second, third));
  return f32x4.abs(f32x4.add(f32x4.sub(last, first), inner));
}

/** Peaks so far for two frames of f32, a little lower so that rounding hides none. */
// @ts-ignore: decorator
@inline
export function floorOf(peaks: usize): v128 {
  const best = f64x2.mul(v128.load(peaks), f64x2.splat(1 - 1e-6));
  return pairOf(best, best);
}

/** True if a frame's number is a local maximum of the magnitude. */
export function isPeak(at: usize): bool {
  const value = load<f32>(at);
  const sign: f32 = value < 0 ? -1 : 1;
  return sign * value >= sign * load<f32>(at - 8) && sign * value > sign * load<f32>(at, 8);
}
