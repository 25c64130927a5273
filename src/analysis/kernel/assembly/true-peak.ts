import { bandEndPairs, bandEndTaps } from './band-limit';
import { sumPairs } from './half-band';
import { lookAtRing, MARGIN, peakNear } from './interpolate';
import { boundsAt, floorOf, isPeak } from './magnitude-peaks';
import { frameAt, interleave, largerFrame, largerMagnitude, magnitudeBits } from './vector';

/** Largest magnitude so far, left and right. */
export const truePeaks: usize = memory.data(16, 16);

/** Frames of the base rate that must be there around those that are looked at. */
export const PEAK_REACH: i32 = 30;
/** Frames that share one look, at twice as many of the internal rate. */
const STRIDE: i32 = 16;
/** Frames of the base rate for the margin of a look. */
const BESIDE: i32 = MARGIN / 2;

/**
 * How far the program may rise between two frames over the higher of them, as a share of the largest
 * step around it from frame to frame: the doubling and the interpolator are sums of such steps, whose
 * weights add up to no more than 0.85.
 */
const STEP_SHARE: f32 = 0.9;

/** The frames that share a look, at the internal rate, with their margin. */
const doubled: usize = memory.data((2 * (STRIDE + 2 * BESIDE + 8)) * 8, 16);
const between: usize = memory.data((STRIDE + 2 * BESIDE + 8) * 8, 16);

/**
 * Raises the true peaks by the frames from … until of the base rate. Few are doubled for it: hardly
 * ever may a frame, with what its surroundings may rise by, be higher than a peak so far.
 */
export function seekTruePeak(program: usize, from: i32, until: i32): void {
  const rise = f32x4.mul(f32x4.splat(STEP_SHARE), largestStep(program, from, until));
  for (let start = from; start < until; start += STRIDE) {
    const stop = min<i32>(start + STRIDE, until);
    const reach = f32x4.add(rise, largest(program, start - 1, stop + 1));
    if (v128.any_true(f32x4.gt(reach, floorOf(truePeaks)))) look(program, start, stop);
  }
}

/** Largest step from frame to frame around some frames, of each channel in both frames. */
function largestStep(program: usize, from: i32, until: i32): v128 {
  const bits = v128.load(magnitudeBits);
  let most = f32x4.splat(0);
  let at = frameAt(program, from - PEAK_REACH + 1);
  const end = frameAt(program, until + PEAK_REACH - 2);
  for (; at + 64 <= end; at += 64) {
    const first = largerMagnitude(stepsAt(at, bits), stepsAt(at + 16, bits));
    const second = largerMagnitude(stepsAt(at + 32, bits), stepsAt(at + 48, bits));
    most = largerMagnitude(most, largerMagnitude(first, second));
  }
  for (; at < end; at += 16) most = largerMagnitude(most, stepsAt(at, bits));
  return largerFrame(most);
}

/** Magnitudes of the steps to two frames. */
// @ts-ignore: decorator
@inline
function stepsAt(at: usize, bits: v128): v128 {
  return v128.and(f32x4.sub(v128.load(at), v128.load(at - 8)), bits);
}

/** Largest magnitude of some frames and perhaps the next five, of each channel in both frames. */
function largest(program: usize, from: i32, until: i32): v128 {
  const bits = v128.load(magnitudeBits);
  let most = f32x4.splat(0);
  const end = frameAt(program, until);
  for (let at = frameAt(program, from); at < end; at += 48) {
    const first = v128.and(v128.load(at), bits);
    const second = v128.and(v128.load(at, 16), bits);
    const third = v128.and(v128.load(at, 32), bits);
    most = largerMagnitude(largerMagnitude(most, first), largerMagnitude(second, third));
  }
  return largerFrame(most);
}

/** Doubles some frames and looks at them and between them. */
function look(program: usize, start: i32, stop: i32): void {
  const first = frameAt(program, start - BESIDE);
  const count = stop - start + 2 * BESIDE + 1;
  sumPairs(first + 8, count, bandEndTaps, bandEndPairs, between);
  for (let n = 0; n < count; n += 2) {
    const odds = v128.load(frameAt(between, n));
    interleave(frameAt(doubled, 2 * n), v128.load(frameAt(first, n)), f32x4.add(odds, odds));
  }
  for (let n = MARGIN; n < MARGIN + 2 * (stop - start); n += 2) seekAt(doubled, n);
}

function seekAt(buffer: usize, n: i32): void {
  const larger = i32x4.bitmask(f32x4.gt(boundsAt(frameAt(buffer, n)), floorOf(truePeaks)));
  if ((larger & 1) != 0) seekBeside(buffer, n, 0);
  if ((larger & 2) != 0) seekBeside(buffer, n, 1);
  if ((larger & 4) != 0) seekBeside(buffer, n + 1, 0);
  if ((larger & 8) != 0) seekBeside(buffer, n + 1, 1);
}

function seekBeside(buffer: usize, n: i32, channel: i32): void {
  const at = frameAt(buffer, n) + (<usize>channel << 2);
  const out = truePeaks + (<usize>channel << 3);
  store<f64>(out, max<f64>(load<f64>(out), abs(<f64>load<f32>(at))));
  if (!isPeak(at)) return;
  const sign: f64 = load<f32>(at) < 0 ? -1 : 1;
  lookAtRing(buffer, -1, channel == 0 ? sign : 0, channel == 0 ? 0 : sign, n, 2);
  store<f64>(out, max<f64>(load<f64>(out), peakNear(n)));
}
