import { accelerations, AHEAD, BEHIND, velocities } from './derive';
import { lookAtRing, MARGIN, NEAR_SHARE, peakNear, peakPlace, valueAt } from './interpolate';
import { STEP_FRAMES } from './low-band';
import { boundsAt, floorOf, isPeak } from './magnitude-peaks';
import { evenMoves, movesMask, oddMoves } from './rings';
import { frameAt, interleave, largerFrame, pairOf } from './vector';

/**
 * Square of how much higher a peak may be than the largest frame around it: a signal limited to B
 * and sampled at f is nowhere higher than 1/cos(πB/f) times its largest sample, 1.53 times for
 * 24.1 kHz at 88.2 kHz.
 */
const PEAK_POWER: f64 = 2.5;

/**
 * Per step, in a ring, f32: the largest squares of velocity left and right, and of acceleration. The
 * likeliest step of a quarter is looked at first, and hardly another is left then.
 */
let ring: usize = 0;
let mask: i32 = 0;

export function reservePeaks(frames: i32): void {
  const count = frames / STEP_FRAMES;
  mask = count - 1;
  ring = heap.alloc(<usize>count << 4);
  memory.fill(ring, 0, <usize>count << 4);
}

// @ts-ignore: decorator
@inline
function boundsOf(step: i32): usize {
  return ring + (<usize>(step & mask) << 4);
}

/** Takes the largest squares of a step, in both frames of a vector. */
// @ts-ignore: decorator
@inline
export function boundPeaks(first: i32, velocity: v128, acceleration: v128): void {
  v128.store(boundsOf(first / STEP_FRAMES), v128.shuffle<i64>(velocity, acceleration, 0, 2));
}

/** Frames beside a step that bound what lies next to its own. */
const REACH: i32 = 3;
/** Frames made of a step and of what a look at its last frame reaches. */
const RUN: i32 = STEP_FRAMES + 2 * MARGIN + 4;
/** Velocity or acceleration of such a run, and where frame 0 would be. */
const run: usize = memory.data(RUN * 8, 16);
let row: usize = 0;
/** The moves that it is made of. */
const gathered: usize = memory.data((RUN + BEHIND + AHEAD + 8) * 8, 16);

let quarterFrom: f64 = 0;
let quarterUntil: f64 = 0;
let figures: usize = 0;

/**
 * Peaks of both quantities of both walls between the two edges of a quarter, of which all steps are
 * bounded, that of the last frame's successor too.
 * @param out velocity left, right, acceleration left, right
 */
export function seekQuarterPeaks(from: f64, until: f64, out: usize): void {
  quarterFrom = from;
  quarterUntil = until;
  figures = out;
  memory.fill(out, 0, 4 * 8);
  for (let quantity = 0; quantity < 2; quantity++) {
    raiseAt(quantity, from);
    raiseAt(quantity, until);
  }
  const first = (<i32>Math.ceil(from) - 1) / STEP_FRAMES;
  const last = <i32>Math.ceil(until) / STEP_FRAMES;
  let most = f32x4.splat(0);
  for (let step = first; step <= last; step++) most = f32x4.pmax(most, v128.load(boundsOf(step)));
  for (let step = first; step <= last; step++) {
    climb(step, i32x4.bitmask(f32x4.eq(v128.load(boundsOf(step)), most)));
  }
  let floor = floorOfSquares();
  for (let step = first; step <= last; step++) {
    const over = i32x4.bitmask(f32x4.gt(v128.load(boundsOf(step)), floor));
    if (over == 0) continue;
    climb(step, over);
    floor = floorOfSquares();
  }
}

/** What the squares of a step must exceed for a peak beside it to exceed those so far. */
function floorOfSquares(): v128 {
  const share = f64x2.splat((1 - 1e-6) / PEAK_POWER);
  const velocity = v128.load(figures);
  const acceleration = v128.load(figures, 16);
  return pairOf(
    f64x2.mul(f64x2.mul(velocity, velocity), share),
    f64x2.mul(f64x2.mul(acceleration, acceleration), share));
}

/** Looks closer at a step; bits 0 and 1 for velocity, 2 and 3 for acceleration. */
function climb(step: i32, quantities: i32): void {
  if ((quantities & 3) != 0) climbStep(0, step * STEP_FRAMES);
  if ((quantities & 12) != 0) climbStep(1, step * STEP_FRAMES);
}

/**
 * Makes velocity or acceleration of a run, so many frames from one on.
 * @param count even
 */
function make(quantity: i32, first: i32, count: i32): void {
  const from = gatherMoves(first - BEHIND, count + BEHIND + AHEAD);
  const out = frameAt(row, first);
  if (quantity == 0) velocities(from, count, out);
  else accelerations(from, count, out);
}

/** Lets a run begin MARGIN before a frame. */
function beginRun(first: i32): void {
  row = run - (<usize>(first - MARGIN) << 3);
}

/** Puts moves one after the other, at least so many; returns the address of the first. */
function gatherMoves(first: i32, count: i32): usize {
  const at = (first >> 1) & movesMask;
  const evens = frameAt(evenMoves, at);
  const odds = frameAt(oddMoves, at);
  for (let n = 0; 2 * n <= count; n += 2) {
    interleave(frameAt(gathered, 2 * n), v128.load(frameAt(evens, n)), v128.load(frameAt(odds, n)));
  }
  return frameAt(gathered, first & 1);
}

// @ts-ignore: decorator
@inline
function peaksOf(quantity: i32): usize {
  return figures + (<usize>quantity << 4);
}

/** Raises the peaks of a quantity to its values at an edge of the quarter. */
function raiseAt(quantity: i32, place: f64): void {
  const frame = <i32>Math.floor(place);
  beginRun(frame);
  make(quantity, frame - MARGIN, RUN);
  for (let channel = 0; channel < 2; channel++) {
    lookAtRing(row, -1, <f64>(1 - channel), <f64>channel, frame, 2);
    raise(peaksOf(quantity), channel, abs(valueAt(place)));
  }
}

/** Looks closer at a step's frames, and at those of them whose bound is higher than a peak so far. */
function climbStep(quantity: i32, first: i32): void {
  const peaks = peaksOf(quantity);
  let floor = floorOf(peaks);
  beginRun(first);
  make(quantity, first - REACH, STEP_FRAMES + 2 * REACH);
  const rises = largestRise(first);
  let isMade = false;
  for (let n = first; n < first + STEP_FRAMES; n += 2) {
    const heights = f32x4.add(rises, f32x4.abs(v128.load(frameAt(row, n))));
    if (!v128.any_true(f32x4.gt(heights, floor))) continue;
    const larger = i32x4.bitmask(f32x4.gt(boundsAt(frameAt(row, n)), floor));
    if (larger == 0) continue;
    if (!isMade) makeMargins(quantity, first);
    isMade = true;
    if ((larger & 1) != 0) seekPeak(n, 0, peaks);
    if ((larger & 2) != 0) seekPeak(n, 1, peaks);
    if ((larger & 4) != 0) seekPeak(n + 1, 0, peaks);
    if ((larger & 8) != 0) seekPeak(n + 1, 1, peaks);
    floor = floorOf(peaks);
  }
}

/** Makes what a look at a step reaches beside what is made of it. */
function makeMargins(quantity: i32, first: i32): void {
  make(quantity, first - MARGIN, MARGIN - REACH + 1);
  make(quantity, first + STEP_FRAMES + REACH - 1, RUN - MARGIN - STEP_FRAMES - REACH + 1);
}

/** What no peak next to a step's frames rises by above its own, left and right in both frames. */
function largestRise(first: i32): v128 {
  const from = frameAt(row, first - 2);
  let most = f32x4.splat(0);
  let least = most;
  for (let n = 0; n < STEP_FRAMES + 2; n += 2) {
    const before = v128.load(frameAt(from, n));
    const at = v128.load(frameAt(from, n), 8);
    const after = v128.load(frameAt(from, n), 16);
    const bend = f32x4.sub(f32x4.add(at, at), f32x4.add(before, after));
    most = f32x4.pmax(most, bend);
    least = f32x4.pmin(least, bend);
  }
  const curvature = f32x4.pmax(most, f32x4.neg(least));
  return f32x4.mul(f32x4.splat(<f32>NEAR_SHARE), largerFrame(curvature));
}

/** Raises a peak to the magnitude at a frame or next to it, as far as that lies in the quarter. */
function seekPeak(frame: i32, channel: i32, peaks: usize): void {
  const at = frameAt(row, frame) + (<usize>channel << 2);
  const isInside = <f64>frame >= quarterFrom && <f64>frame <= quarterUntil;
  if (isInside) raise(peaks, channel, abs(<f64>load<f32>(at)));
  if (!isPeak(at)) return;
  const sign: f64 = load<f32>(at) < 0 ? -1 : 1;
  lookAtRing(row, -1, channel == 0 ? sign : 0, channel == 0 ? 0 : sign, frame, 2);
  const peak = peakNear(frame);
  if (peakPlace >= quarterFrom && peakPlace <= quarterUntil) raise(peaks, channel, peak);
}

function raise(peaks: usize, channel: i32, value: f64): void {
  const at = peaks + (<usize>channel << 3);
  store<f64>(at, max<f64>(load<f64>(at), value));
}
