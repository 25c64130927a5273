import { firstOf, frameAt, left, right, secondOf } from './vector';

/**
 * How far a peak may rise above the frame it is next to, as a share of the largest curvature
 * |2y(k) − y(k−1) − y(k+1)| at that frame and at the two beside it: a tone at the band end needs
 * 0.23, noise up to it 0.38, measured on 1.6 million local maxima. The frame's own curvature alone
 * bounds nothing: two tones may hide a peak behind three frames that are nearly level.
 */
export const NEAR_SHARE: f64 = 0.4;

/**
 * The same as a share of the largest curvature of a whole group of frames: noise needs up to 0.22.
 */
export const PEAK_SHARE: f64 = 0.3;

/** Ripple of the interpolator in the bass, where a peak rises by less than that. */
export const RIPPLE: f64 = 1e-6;

/**
 * The same for a local maximum of the frames by itself: a parabola through it and the frames beside
 * it rises by no more than an eighth of the difference between these, and the peak is higher than
 * that by no more than this share of the largest difference between neighbours of the five
 * curvatures around it: noise and tones up to the band end need 0.10, measured on 2.06 million local
 * maxima; see tests/analysis/peak-rise.test.ts.
 */
export const SKEW_SHARE: f64 = 0.15;

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

/** What that bound is for a local maximum that is looked at. */
export function riseAt(frame: i32): f64 {
  const at = row + (<usize>frame << 3);
  const before = v128.load(at - 8);
  const here = v128.load(at);
  const after = v128.load(at, 8);
  const early = skewOf(v128.load(at - 24), v128.load(at - 16), before, here);
  const late = skewOf(before, here, after, v128.load(at, 16));
  const skews = f64x2.pmax(f64x2.abs(early), f64x2.abs(late));
  const skew = f64x2.pmax(skews, v128.shuffle<f64>(skews, skews, 1, 0));
  const slope = abs(left(after) - left(before));
  return RIPPLE * abs(left(here)) + slope / 8 + SKEW_SHARE * left(skew);
}

/** By how much the curvature at the third of four numbers is lower than at the second. */
// @ts-ignore: decorator
@inline
function skewOf(first: v128, second: v128, third: v128, last: v128): v128 {
  return f64x2.add(
    f64x2.sub(last, first), f64x2.mul(f64x2.splat(3), f64x2.sub(second, third)));
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
