import { lookAtRing, NEAR_SHARE, peakNear, peakPlace, rise, valueAt } from './interpolate';
import { wallMask } from './rings';
import { anyLarger, firstOf, frameAt, pairOf } from './vector';

/**
 * Square of how much higher a peak may be than the largest frame around it: a signal limited to B
 * and sampled at f is nowhere higher than 1/cos(πB/f) times its largest sample, 1.53 times for
 * 24.1 kHz at 88.2 kHz.
 */
export const PEAK_POWER: f64 = 2.5;
/** Places between which peaks count: the quarter's own edges. */
let peaksFrom: f64 = 0;
let peaksUntil: f64 = 0;

export function countPeaksFrom(place: f64): void {
  peaksFrom = place;
}

export function countPeaksUntil(place: f64): void {
  peaksUntil = place;
}

/** True if frames with such squares may have a peak beside them that is higher than those so far. */
// @ts-ignore: decorator
@inline
export function mayBePeak(squares: v128, scale: f32, peaks: usize): bool {
  const best = f64x2.mul(v128.load(peaks), f64x2.splat(scale));
  const reach = f64x2.mul(f64x2.splat(PEAK_POWER), firstOf(squares));
  return anyLarger(reach, f64x2.mul(best, best));
}

/** Value at an edge of the quarter, and the peak that lies within it next to a frame beyond. */
export function peakAtEdge(ring: usize, place: f64, beyond: i32, peaks: usize): void {
  for (let channel = 0; channel < 2; channel++) {
    lookAtRing(ring, wallMask, <f64>(1 - channel), <f64>channel, <i32>Math.floor(place), 2);
    raise(peaks, channel, abs(valueAt(place)));
    seekPeak(ring, beyond, channel, peaks);
  }
}

/** Looks closer at frames whose bound is higher than a peak so far. */
export function seekPeaks(ring: usize, from: i32, until: i32, peaks: usize): void {
  const run = frameAt(ring, (from - 2) & wallMask);
  let floor = floorOf(peaks);
  for (let n = from; n < until; n += 2) {
    const larger = i32x4.bitmask(f32x4.gt(boundsAt(frameAt(run, n - from + 2)), floor));
    if (larger == 0) continue;
    if ((larger & 1) != 0) seekPeak(ring, n, 0, peaks);
    if ((larger & 2) != 0) seekPeak(ring, n, 1, peaks);
    if ((larger & 4) != 0 && n + 1 < until) seekPeak(ring, n + 1, 0, peaks);
    if ((larger & 8) != 0 && n + 1 < until) seekPeak(ring, n + 1, 1, peaks);
    floor = floorOf(peaks);
  }
}

/** What no peak next to either of two frames is higher than. */
// @ts-ignore: decorator
@inline
export function boundsAt(frame: usize): v128 {
  const before = v128.load(frame - 8);
  const at = v128.load(frame);
  const after = v128.load(frame, 8);
  const early = bendBetween(v128.load(frame - 16), before, at);
  const late = bendBetween(at, after, v128.load(frame, 16));
  const most = f32x4.pmax(bendBetween(before, at, after), f32x4.pmax(early, late));
  return f32x4.add(f32x4.abs(at), f32x4.mul(f32x4.splat(<f32>NEAR_SHARE), most));
}

/** Magnitude of the curvature of four numbers. */
// @ts-ignore: decorator
@inline
function bendBetween(before: v128, at: v128, after: v128): v128 {
  return f32x4.abs(f32x4.sub(f32x4.add(at, at), f32x4.add(before, after)));
}

/** Peaks so far for two frames of f32, a little lower so that rounding hides none. */
// @ts-ignore: decorator
@inline
export function floorOf(peaks: usize): v128 {
  const best = f64x2.mul(v128.load(peaks), f64x2.splat(1 - 1e-6));
  return pairOf(best, best);
}

/** Raises a peak to the magnitude at a frame or next to it, as far as that lies in the quarter. */
function seekPeak(ring: usize, frame: i32, channel: i32, peaks: usize): void {
  const at = frameAt(ring, frame & wallMask) + (<usize>channel << 2);
  const isInside = <f64>frame >= peaksFrom && <f64>frame <= peaksUntil;
  if (isInside) raise(peaks, channel, abs(<f64>load<f32>(at)));
  const first = frameAt(ring, (frame - 2) & wallMask) + (<usize>channel << 2);
  if (!mayPeak(first, load<f64>(peaks + (<usize>channel << 3)))) return;
  const sign: f64 = load<f32>(at) < 0 ? -1 : 1;
  lookAtRing(ring, wallMask, channel == 0 ? sign : 0, channel == 0 ? 0 : sign, frame, 2);
  const peak = peakNear(frame);
  if (peakPlace >= peaksFrom && peakPlace <= peaksUntil) raise(peaks, channel, peak);
}

/**
 * True if a frame is a local maximum of the magnitude that may have a peak over `best` next to it.
 * @param first address of the number two frames before it
 */
export function mayPeak(first: usize, best: f64): bool {
  const value = <f64>load<f32>(first, 16);
  const sign: f64 = value < 0 ? -1 : 1;
  const at = sign * value;
  const last = sign * <f64>load<f32>(first, 8);
  const next = sign * <f64>load<f32>(first, 24);
  if (!(at >= last && at > next)) return false;
  const sooner = sign * <f64>load<f32>(first);
  const later = sign * <f64>load<f32>(first, 32);
  return at + rise(sooner, last, at, next, later) > best;
}

function raise(peaks: usize, channel: i32, value: f64): void {
  const at = peaks + (<usize>channel << 3);
  store<f64>(at, max<f64>(load<f64>(at), value));
}
