import { firstOf, frameAt, left, right, secondOf } from './vector';

/**
 * How far a peak may rise above the frame it is next to, slope s = y(n+1) − y(n−1) and curvature
 * c = 2y(n) − y(n−1) − y(n+1): no more than SLOPE_SHARE·s²/c + CURVATURE_SHARE·c. The parabola
 * through the three frames rises by s²/8c; a tone at the band end, 24.1 kHz at 88.2 kHz, by 2.4
 * times that.
 */
export const SLOPE_SHARE: f64 = 0.4;
export const CURVATURE_SHARE: f64 = 0.02;

/**
 * Share of the curvature at a frame that no peak next to it rises above it by; a tone at the band
 * end needs 0.23.
 */
export const PEAK_SHARE: f64 = 0.3;

/** Ripple of the interpolator in the bass, where a peak rises by less than that. */
export const RIPPLE: f64 = 1e-6;

/** What that bound is for a frame between its neighbours; a frame on a slope has no peak next to it. */
// @ts-ignore: decorator
@inline
export function rise(before: f64, at: f64, after: f64): f64 {
  const curvature = 2 * at - before - after;
  const slope = after - before;
  if (!(curvature > 0 && abs(slope) <= curvature)) return RIPPLE * abs(at);
  return RIPPLE * abs(at) + (SLOPE_SHARE * slope * slope) / curvature + CURVATURE_SHARE * curvature;
}

const TAPS: i32 = 12;
const BEFORE: i32 = 5;
const PHASES: i32 = 64;
/** Phases of an eighth of a frame. */
const PEAK_STEP: i32 = 8;
/** Largest distance of a climb, eighths. */
const REACH: i32 = 8;

/** Frames that an interpolated value between two frames needs on each side, and one more to climb. */
export const MARGIN: i32 = 8;
/** Most frames that are looked at together, without their margin. */
const MOST_FRAMES: i32 = 40;
/** Taps of all phases, one row after another; see interpolate.ts of the analysis. */
export const interpolationTable: usize = memory.data((PHASES + 1) * TAPS * 8, 16);

/** The numbers that are looked at, one a frame with a margin on both sides, and where frame 0 is. */
const numbers: usize = memory.data((MOST_FRAMES + 2 * MARGIN + 2) * 8, 16);
let row: usize = 0;

/**
 * Room for the numbers of some frames and their margin, which are looked at from now on: that of
 * frame `first − MARGIN` comes first.
 */
export function lookAt(first: i32): usize {
  row = numbers - (<usize>(first - MARGIN) << 3);
  return numbers;
}

/** Looks at wl·left + wr·right of some frames of a ring; at most so many that a run holds them. */
export function lookAtRing(
  ring: usize, mask: i32, wl: f64, wr: f64, first: i32, count: i32,
): void {
  const out = lookAt(first);
  const run = frameAt(ring, (first - MARGIN) & mask);
  const weights = f64x2(wl, wr);
  for (let n = 0; n < count + 2 * MARGIN; n += 2) {
    const pair = v128.load(frameAt(run, n));
    const one = f64x2.mul(weights, firstOf(pair));
    const next = f64x2.mul(weights, secondOf(pair));
    const lefts = v128.shuffle<f64>(one, next, 0, 2);
    const rights = v128.shuffle<f64>(one, next, 1, 3);
    v128.store(out + (<usize>n << 3), f64x2.add(lefts, rights));
  }
}

/** The signal at a frame. */
// @ts-ignore: decorator
@inline
export function signalAt(frame: i32): f64 {
  return load<f64>(row + (<usize>frame << 3));
}

/**
 * Which of two frames is higher than `best` or may have a peak next to it that is: bit 0 or 1. Takes
 * |s| for s²/c, which at a top it is never under.
 */
// @ts-ignore: decorator
@inline
export function mayRise(frame: i32, best: f64): i32 {
  const run = row + (<usize>frame << 3);
  const before = v128.load(run - 8);
  const at = v128.load(run);
  const after = v128.load(run, 8);
  const curvature = f64x2.sub(f64x2.add(at, at), f64x2.add(before, after));
  const slope = f64x2.abs(f64x2.sub(after, before));
  const change = f64x2.add(
    f64x2.mul(f64x2.splat(SLOPE_SHARE), slope), f64x2.mul(f64x2.splat(CURVATURE_SHARE), curvature));
  const ripple = f64x2.mul(f64x2.splat(RIPPLE), f64x2.abs(at));
  const rises = v128.and(f64x2.le(slope, curvature), change);
  const bound = f64x2.add(f64x2.add(at, ripple), rises);
  return i64x2.bitmask(f64x2.gt(bound, f64x2.splat(best)));
}

/** Value at a phase after a frame; phases under 0 and over a frame carry over. */
function valueAtPhase(frame: i32, phase: i32): f64 {
  const taps = interpolationTable + <usize>((phase & (PHASES - 1)) * TAPS * 8);
  const from = row + (<usize>(frame + (phase >> 6) - BEFORE) << 3);
  let early = f64x2.mul(v128.load(taps, 0), v128.load(from, 0));
  let late = f64x2.mul(v128.load(taps, 16), v128.load(from, 16));
  early = f64x2.add(early, f64x2.mul(v128.load(taps, 32), v128.load(from, 32)));
  late = f64x2.add(late, f64x2.mul(v128.load(taps, 48), v128.load(from, 48)));
  early = f64x2.add(early, f64x2.mul(v128.load(taps, 64), v128.load(from, 64)));
  late = f64x2.add(late, f64x2.mul(v128.load(taps, 80), v128.load(from, 80)));
  const sum = f64x2.add(early, late);
  return left(sum) + right(sum);
}

/** Value at any place that is looked at, in frames. */
export function valueAt(place: f64): f64 {
  const frame = <i32>Math.floor(place);
  const phases = (place - <f64>frame) * PHASES;
  const phase = <i32>Math.floor(phases);
  const before = valueAtPhase(frame, phase);
  return before + (phases - <f64>phase) * (valueAtPhase(frame, phase + 1) - before);
}

/** Where the last peak was found, in frames. */
export let peakPlace: f64 = 0;

/** The maximum next to a local maximum of the frames; its place is then in `peakPlace`. */
export function peakNear(frame: i32): f64 {
  let best = signalAt(frame);
  let ahead = valueAtPhase(frame, PEAK_STEP);
  let behind = valueAtPhase(frame, -PEAK_STEP);
  let step = 1;
  if (!(ahead > behind)) {
    step = -1;
    const exchange = ahead;
    ahead = behind;
    behind = exchange;
  }
  let eighths = 0;
  while (ahead > best && abs(eighths) < REACH) {
    eighths += step;
    behind = best;
    best = ahead;
    ahead = valueAtPhase(frame, (eighths + step) * PEAK_STEP);
  }
  const curvature = 2 * best - ahead - behind;
  const slope = ahead - behind;
  const offset = curvature > 0 ? slope / (2 * curvature) : 0;
  peakPlace = <f64>frame + (<f64>eighths + <f64>step * offset) / 8;
  return best + (offset * slope) / 4;
}

/** A frame as high as the one before it and higher than the next. */
// @ts-ignore: decorator
@inline
export function isLocalMaximum(frame: i32): bool {
  const value = signalAt(frame);
  return value >= signalAt(frame - 1) && value > signalAt(frame + 1);
}
