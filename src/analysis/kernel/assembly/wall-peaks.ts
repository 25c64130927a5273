import { isLocalMaximum, lookAtRing, peakNear, peakPlace, signalAt, valueAt } from './interpolate';
import { wallMask } from './rings';
import { anyLarger, firstOf, frameAt, wideFrame } from './vector';

/**
 * Square of how much higher a peak may be than the largest frame around it: a signal limited to B
 * and sampled at f is nowhere higher than 1/cos(πB/f) times its largest sample, 1.53 times for
 * 24.1 kHz at 88.2 kHz.
 */
export const PEAK_POWER: f64 = 2.5;
/**
 * Share of the curvature at a frame that no peak next to it rises above it by; a tone at the band
 * end needs 0.23.
 */
export const PEAK_SHARE: f64 = 0.3;

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
  const share = f64x2.splat(PEAK_SHARE);
  const run = frameAt(ring, (from - 1) & wallMask);
  let best = v128.load(peaks);
  for (let n = from; n < until; n++) {
    const here = frameAt(run, n - from);
    const at = wideFrame(here + 8);
    const beside = f64x2.add(wideFrame(here), wideFrame(here + 16));
    const curvature = f64x2.abs(f64x2.sub(f64x2.add(at, at), beside));
    const bound = f64x2.add(f64x2.abs(at), f64x2.mul(share, curvature));
    const larger = i64x2.bitmask(f64x2.gt(bound, best));
    if (larger == 0) continue;
    if ((larger & 1) != 0) seekPeak(ring, n, 0, peaks);
    if ((larger & 2) != 0) seekPeak(ring, n, 1, peaks);
    best = v128.load(peaks);
  }
}

/** Raises a peak to the magnitude at a frame or next to it, as far as that lies in the quarter. */
function seekPeak(ring: usize, frame: i32, channel: i32, peaks: usize): void {
  const value = load<f32>(frameAt(ring, frame & wallMask) + (<usize>channel << 2));
  const sign: f64 = value < 0 ? -1 : 1;
  lookAtRing(ring, wallMask, channel == 0 ? sign : 0, channel == 0 ? 0 : sign, frame, 2);
  if (<f64>frame >= peaksFrom && <f64>frame <= peaksUntil) raise(peaks, channel, signalAt(frame));
  if (!isLocalMaximum(frame)) return;
  const peak = peakNear(frame);
  if (peakPlace >= peaksFrom && peakPlace <= peaksUntil) raise(peaks, channel, peak);
}

function raise(peaks: usize, channel: i32, value: f64): void {
  const at = peaks + (<usize>channel << 3);
  store<f64>(at, max<f64>(load<f64>(at), value));
}
