import { frameAt, left, right } from './vector';

/**
 * How far a peak may rise above the frame it is next to, slope s = y(n+1) − y(n−1) and curvature
 * c = 2y(n) − y(n−1) − y(n+1): no more than SLOPE_SHARE·s²/c + CURVATURE_SHARE·c. The parabola
 * through the three frames rises by s²/8c; a tone at the band end, 24.1 kHz at 88.2 kHz, by 2.4
 * times that.
 */
export const SLOPE_SHARE: f64 = 0.4;
export const CURVATURE_SHARE: f64 = 0.02;

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
/** Taps of all phases, one row after another; see interpolate.ts of the analysis. */
export const interpolationTable: usize = memory.data((PHASES + 1) * TAPS * 8, 16);

/**
 * What is interpolated: wl·left + wr·right of the frames of a ring, which runs of them may be read
 * from without a mask, or the numbers of a row.
 * One at a time, so that climbing needs no closures.
 */
let ring: usize = 0;
let mask: i32 = 0;
let weightLeft: f64 = 0;
let weightRight: f64 = 0;
let row: usize = 0;

export function lookAtRing(buffer: usize, ringMask: i32, wl: f64, wr: f64): void {
  ring = buffer;
  mask = ringMask;
  weightLeft = wl;
  weightRight = wr;
  row = 0;
}

/** @param numbers address of the number of frame 0, which may lie before the first there is */
export function lookAtRow(numbers: usize): void {
  row = numbers;
  weightLeft = 1;
  weightRight = 0;
}

/** The signal at a frame. */
// @ts-ignore: decorator
@inline
export function signalAt(frame: i32): f64 {
  if (row != 0) return load<f64>(row + (<usize>frame << 3));
  const at = frameAt(ring, frame & mask);
  return weightLeft * load<f64>(at) + weightRight * load<f64>(at, 8);
}

/** Address of a frame's numbers, from which `runValue` reads it and those after it by `runStep`. */
// @ts-ignore: decorator
@inline
export function runFrom(frame: i32): usize {
  return row != 0 ? row + (<usize>frame << 3) : frameAt(ring, frame & mask);
}

/** Bytes from one frame of a run to the next. */
// @ts-ignore: decorator
@inline
export function runStep(): usize {
  return row != 0 ? 8 : 16;
}

/** The signal at an address of a run; a row has its number first and no second weight. */
// @ts-ignore: decorator
@inline
export function runValue(address: usize): f64 {
  return weightLeft * load<f64>(address) + weightRight * load<f64>(address, 8);
}

/** Value at a phase after a frame; phases under 0 and over a frame carry over. */
function valueAtPhase(frame: i32, phase: i32): f64 {
  const from = frame + (phase >> 6) - BEFORE;
  const taps = interpolationTable + <usize>((phase & (PHASES - 1)) * TAPS * 8);
  return row != 0 ? rowValue(from, taps) : ringValue(from, taps);
}

function rowValue(from: i32, taps: usize): f64 {
  const numbers = row + (<usize>from << 3);
  let sum = f64x2.splat(0);
  for (let at: usize = 0; at < <usize>TAPS << 3; at += 16) {
    sum = f64x2.add(sum, f64x2.mul(v128.load(taps + at), v128.load(numbers + at)));
  }
  return left(sum) + right(sum);
}

/** Both walls at once; their weights come last, since the interpolation is linear. */
function ringValue(from: i32, taps: usize): f64 {
  const run = frameAt(ring, from & mask);
  let even = f64x2.mul(v128.load64_splat(taps, 0), v128.load(run, 0));
  let odd = f64x2.mul(v128.load64_splat(taps, 8), v128.load(run, 16));
  even = f64x2.add(even, f64x2.mul(v128.load64_splat(taps, 16), v128.load(run, 32)));
  odd = f64x2.add(odd, f64x2.mul(v128.load64_splat(taps, 24), v128.load(run, 48)));
  even = f64x2.add(even, f64x2.mul(v128.load64_splat(taps, 32), v128.load(run, 64)));
  odd = f64x2.add(odd, f64x2.mul(v128.load64_splat(taps, 40), v128.load(run, 80)));
  even = f64x2.add(even, f64x2.mul(v128.load64_splat(taps, 48), v128.load(run, 96)));
  odd = f64x2.add(odd, f64x2.mul(v128.load64_splat(taps, 56), v128.load(run, 112)));
  even = f64x2.add(even, f64x2.mul(v128.load64_splat(taps, 64), v128.load(run, 128)));
  odd = f64x2.add(odd, f64x2.mul(v128.load64_splat(taps, 72), v128.load(run, 144)));
  even = f64x2.add(even, f64x2.mul(v128.load64_splat(taps, 80), v128.load(run, 160)));
  odd = f64x2.add(odd, f64x2.mul(v128.load64_splat(taps, 88), v128.load(run, 176)));
  const sum = f64x2.add(even, odd);
  return weightLeft * left(sum) + weightRight * right(sum);
}

/** Value at any place, in frames. */
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
