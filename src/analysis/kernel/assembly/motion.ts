import {
  acceleration, advanceMotion, displacement, displacementMask, mirrorStart, motionEnd, velocity,
  wallMask,
} from './rings';
import { CHUNK_FRAMES } from './source';
import { seekTruePeak } from './true-peak';
import { exchanged, frameAt } from './vector';

/** Frames by which the filter is late; see motion-filter.ts of the analysis. */
const DELAY: i32 = 4;
/** Taps of the FIRs; displacement's begin two frames before the newest, acceleration's one. */
const DISPLACEMENT_TAPS: i32 = 6;
const VELOCITY_TAPS: i32 = 10;
/** Frames before the newest that the FIRs reach back. */
const HISTORY: usize = 9;
/** Frames kept of the program and of the recursion for the next chunk. */
const KEPT: i32 = 16;
/** Frames around a true peak. */
const PEAK_MARGIN: i32 = 8;
const ROOM: i32 = 2 * CHUNK_FRAMES + 512 + KEPT;

/** Zeros (3), poles (3), then the three FIRs, longest history last; each in both lanes. */
export const filterTaps: usize = memory.data((6 + 6 + 10 + 8) * 16, 16);
const displacementTaps: usize = filterTaps + 6 * 16;
const velocityTaps: usize = displacementTaps + DISPLACEMENT_TAPS * 16;
const accelerationTaps: usize = velocityTaps + VELOCITY_TAPS * 16;

const program: usize = memory.data(ROOM * 16, 16);
const recursion: usize = memory.data(ROOM * 16, 16);
/** The program's and the elliptical filter's delays as the recursion last left them. */
const delays: usize = memory.data(4 * 16, 16);
const gains: usize = memory.data(16, 16);
const elliptical: usize = memory.data(5 * 16, 16);
let swap: bool = false;
let isElliptical: bool = false;

const DECIMATION: i32 = 32;
const LOW_CAPACITY: i32 = 4096;
/** Decimated displacement that is complete, from the start of the lead on. */
export const lowFrames: usize = memory.data(LOW_CAPACITY * 16, 16);
export let lowCount: i32 = 0;
/** Σx and Σi·x of the step in hand, and the last step's Σi·x. */
const lowSums: usize = memory.data(3 * 16, 16);

export function setWiring(swapped: bool, leftGain: f64, rightGain: f64): void {
  swap = swapped;
  store<f64>(gains, leftGain);
  store<f64>(gains, rightGain, 8);
}

export function setElliptical(b0: f64, b1: f64, b2: f64, a1: f64, a2: f64): void {
  isElliptical = true;
  v128.store(elliptical, f64x2.splat(b0), 0);
  v128.store(elliptical, f64x2.splat(b1), 16);
  v128.store(elliptical, f64x2.splat(b2), 32);
  v128.store(elliptical, f64x2.splat(a1), 48);
  v128.store(elliptical, f64x2.splat(a2), 64);
}

export function takeLow(): void {
  lowCount = 0;
}

/** Where the caller writes the next frames of the program. */
export function programRoom(): usize {
  return frameAt(program, KEPT);
}

/** Moves the walls by the frames in `programRoom()`. */
export function moveWalls(count: i32): void {
  seekTruePeak(program, KEPT - PEAK_MARGIN, KEPT - PEAK_MARGIN + count);
  const wired = frameAt(recursion, KEPT);
  const plain = !swap && !isElliptical;
  if (!plain) exchange(programRoom(), wired, count);
  if (isElliptical) filterSide(wired, count);
  if (plain) recurse(programRoom(), wired, count, v128.load(gains));
  else recurse(wired, wired, count, f64x2.splat(1));
  writeMotion(count);
  memory.copy(program, frameAt(program, count), KEPT << 4);
  memory.copy(recursion, frameAt(recursion, count), KEPT << 4);
}

/** Channels as they are to be cut: exchanged if wired so, with their gains. */
function exchange(frames: usize, out: usize, count: i32): void {
  const gain = v128.load(gains);
  for (let n = 0; n < count; n++) {
    const frame = v128.load(frameAt(frames, n));
    v128.store(frameAt(out, n), f64x2.mul(gain, swap ? exchanged(frame) : frame));
  }
}

/** High-pass on the difference: one lane carries it, the other its negative. */
function filterSide(frames: usize, count: i32): void {
  const half = f64x2.splat(0.5);
  let delay1 = v128.load(delays, 32);
  let delay2 = v128.load(delays, 48);
  for (let n = 0; n < count; n++) {
    const frame = v128.load(frameAt(frames, n));
    const other = exchanged(frame);
    const side = f64x2.mul(half, f64x2.sub(frame, other));
    const high = f64x2.add(f64x2.mul(v128.load(elliptical, 0), side), delay1);
    delay1 = f64x2.add(delay2, f64x2.sub(
      f64x2.mul(v128.load(elliptical, 16), side), f64x2.mul(v128.load(elliptical, 48), high)));
    delay2 = f64x2.sub(
      f64x2.mul(v128.load(elliptical, 32), side), f64x2.mul(v128.load(elliptical, 64), high));
    const middle = f64x2.mul(half, f64x2.add(frame, other));
    v128.store(frameAt(frames, n), f64x2.add(middle, high));
  }
  v128.store(delays, delay1, 32);
  v128.store(delays, delay2, 48);
}

/** The common recursion on frames and their gain. */
function recurse(frames: usize, out: usize, count: i32, gain: v128): void {
  const zero1 = v128.load(filterTaps, 16);
  const zero2 = v128.load(filterTaps, 32);
  const pole1 = v128.load(filterTaps, 48);
  const pole2 = v128.load(filterTaps, 64);
  const pole3 = v128.load(filterTaps, 80);
  let p1 = v128.load(delays, 0);
  let p2 = v128.load(delays, 16);
  let q1 = v128.load(out - 16);
  let q2 = v128.load(out - 32);
  let q3 = v128.load(out - 48);
  for (let n = 0; n < count; n++) {
    const p = f64x2.mul(gain, v128.load(frameAt(frames, n)));
    const input = f64x2.add(p, f64x2.add(f64x2.mul(zero1, p1), f64x2.mul(zero2, p2)));
    const past = f64x2.add(f64x2.mul(pole2, q2), f64x2.mul(pole3, q3));
    const q = f64x2.sub(f64x2.sub(input, past), f64x2.mul(pole1, q1));
    v128.store(frameAt(out, n), q);
    p2 = p1;
    p1 = p;
    q3 = q2;
    q2 = q1;
    q1 = q;
  }
  v128.store(delays, p1, 0);
  v128.store(delays, p2, 16);
}

/** The three FIRs, into the rings; the first frames come out before the lead and are dropped. */
function writeMotion(count: i32): void {
  const dropped = max<i32>(0, min<i32>(count, -motionEnd));
  let number = motionEnd + dropped;
  let at = frameAt(recursion, KEPT + dropped);
  const end = frameAt(recursion, KEPT + count);
  while (at < end) {
    const steps = min<i32>(DECIMATION - (number & (DECIMATION - 1)), <i32>((end - at) >> 4));
    writeFrames(at, number, steps);
    mirrorStart(displacement, displacementMask, number, steps);
    mirrorStart(velocity, wallMask, number, steps);
    mirrorStart(acceleration, wallMask, number, steps);
    number += steps;
    at += <usize>steps << 4;
    if ((number & (DECIMATION - 1)) == 0) endLowStep();
  }
  advanceMotion(count);
}

// @ts-ignore: decorator
@inline
function times(a: v128, b: v128): v128 {
  return f64x2.mul(a, b);
}

// @ts-ignore: decorator
@inline
function plus(a: v128, b: v128): v128 {
  return f64x2.add(a, b);
}

/** Frames of one step of the decimation at most. */
function writeFrames(from: usize, first: i32, count: i32): void {
  let sum = v128.load(lowSums);
  let weighted = v128.load(lowSums, 16);
  let within = f64x2.splat(<f64>(first & (DECIMATION - 1)));
  const one = f64x2.splat(1);
  const displacements = frameAt(displacement, first & displacementMask);
  const velocities = frameAt(velocity, first & wallMask);
  const accelerations = frameAt(acceleration, first & wallMask);
  for (let n = 0; n < count; n++) {
    const oldest = frameAt(from, n) - (HISTORY << 4);
    const q0 = v128.load(oldest, 144);
    const q1 = v128.load(oldest, 128);
    const q2 = v128.load(oldest, 112);
    const q3 = v128.load(oldest, 96);
    const q4 = v128.load(oldest, 80);
    const q5 = v128.load(oldest, 64);
    const q6 = v128.load(oldest, 48);
    const q7 = v128.load(oldest, 32);
    const q8 = v128.load(oldest, 16);
    const q9 = v128.load(oldest, 0);
    const u = plus(plus(plus(times(v128.load(filterTaps, 96), q2), times(v128.load(filterTaps, 112), q3)), plus(times(v128.load(filterTaps, 128), q4), times(v128.load(filterTaps, 144), q5))), plus(times(v128.load(filterTaps, 160), q6), times(v128.load(filterTaps, 176), q7)));
    const v = plus(plus(plus(plus(times(v128.load(filterTaps, 192), q0), times(v128.load(filterTaps, 208), q1)), plus(times(v128.load(filterTaps, 224), q2), times(v128.load(filterTaps, 240), q3))), plus(plus(times(v128.load(filterTaps, 256), q4), times(v128.load(filterTaps, 272), q5)), plus(times(v128.load(filterTaps, 288), q6), times(v128.load(filterTaps, 304), q7)))), plus(times(v128.load(filterTaps, 320), q8), times(v128.load(filterTaps, 336), q9)));
    const a = plus(plus(plus(times(v128.load(filterTaps, 352), q1), times(v128.load(filterTaps, 368), q2)), plus(times(v128.load(filterTaps, 384), q3), times(v128.load(filterTaps, 400), q4))), plus(plus(times(v128.load(filterTaps, 416), q5), times(v128.load(filterTaps, 432), q6)), plus(times(v128.load(filterTaps, 448), q7), times(v128.load(filterTaps, 464), q8))));
    v128.store(frameAt(displacements, n), u);
    v128.store(frameAt(velocities, n), v);
    v128.store(frameAt(accelerations, n), a);
    sum = plus(sum, u);
    weighted = plus(weighted, f64x2.mul(within, u));
    within = plus(within, one);
  }
  v128.store(lowSums, sum);
  v128.store(lowSums, weighted, 16);
}

/** Average over the triangle that ends with this step: its falling half, the last one's rising. */
function endLowStep(): void {
  const step = f64x2.splat(<f64>DECIMATION);
  const falling = f64x2.sub(f64x2.mul(step, v128.load(lowSums)), v128.load(lowSums, 16));
  const sum = f64x2.add(falling, v128.load(lowSums, 32));
  const scale = f64x2.splat(1 / <f64>(DECIMATION * DECIMATION));
  v128.store(frameAt(lowFrames, lowCount), f64x2.mul(sum, scale));
  lowCount++;
  v128.store(lowSums, v128.load(lowSums, 16), 32);
  v128.store(lowSums, f64x2.splat(0), 0);
  v128.store(lowSums, f64x2.splat(0), 16);
}

/** Sets the count of motion frames back by what the filter is late. */
export function startMotion(): void {
  advanceMotion(-DELAY);
}
