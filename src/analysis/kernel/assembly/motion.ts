import {
  acceleration, advanceMotion, displacement, displacementMask, mirrorStart, motionEnd, velocity,
  wallMask,
} from './rings';
import { CHUNK_FRAMES } from './source';
import { seekTruePeak } from './true-peak';
import { exchanged, frameAt } from './vector';

/** Frames by which the displacement is late; see motion-filter.ts of the analysis. */
const DELAY: i32 = 2;
/** Frames of displacement that velocity and acceleration reach to each side. */
const REACH: i32 = 4;
/** Frames kept of the program and of the recursion for the next chunk. */
const KEPT: i32 = 16;
/** Frames around a true peak. */
const PEAK_MARGIN: i32 = 8;
const ROOM: i32 = 2 * CHUNK_FRAMES + 512 + KEPT;

/**
 * Zeros (3), poles (3), 6 taps of displacement, 4 pairs of velocity, 3 of acceleration; each in
 * both lanes.
 */
export const filterTaps: usize = memory.data((6 + 6 + 4 + 3) * 16, 16);

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
    mirrorStart(velocity, wallMask, number - REACH, steps);
    mirrorStart(acceleration, wallMask, number - REACH, steps);
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
function minus(a: v128, b: v128): v128 {
  return f64x2.sub(a, b);
}

// @ts-ignore: decorator
@inline
function plus(a: v128, b: v128): v128 {
  return f64x2.add(a, b);
}

/**
 * Frames of one step of the decimation at most. Velocity and acceleration are those of the frame
 * REACH before, for which the displacement on both sides is there.
 */
function writeFrames(from: usize, first: i32, count: i32): void {
  let sum = v128.load(lowSums);
  let weighted = v128.load(lowSums, 16);
  let within = f64x2.splat(<f64>(first & (DECIMATION - 1)));
  const one = f64x2.splat(1);
  const displacements = frameAt(displacement, first & displacementMask);
  let u8 = v128.load(frameAt(displacement, (first - 8) & displacementMask));
  let u7 = v128.load(frameAt(displacement, (first - 7) & displacementMask));
  let u6 = v128.load(frameAt(displacement, (first - 6) & displacementMask));
  let u5 = v128.load(frameAt(displacement, (first - 5) & displacementMask));
  let u4 = v128.load(frameAt(displacement, (first - 4) & displacementMask));
  let u3 = v128.load(frameAt(displacement, (first - 3) & displacementMask));
  let u2 = v128.load(frameAt(displacement, (first - 2) & displacementMask));
  let u1 = v128.load(frameAt(displacement, (first - 1) & displacementMask));
  for (let n = 0; n < count; n++) {
    const oldest = frameAt(from, n) - (5 << 4);
    const u = plus(
      plus(
        plus(times(v128.load(filterTaps, 96), v128.load(oldest, 80)),
          times(v128.load(filterTaps, 112), v128.load(oldest, 64))),
        plus(times(v128.load(filterTaps, 128), v128.load(oldest, 48)),
          times(v128.load(filterTaps, 144), v128.load(oldest, 32)))),
      plus(times(v128.load(filterTaps, 160), v128.load(oldest, 16)),
        times(v128.load(filterTaps, 176), v128.load(oldest))));
    v128.store(frameAt(displacements, n), u);
    const v = plus(
      plus(times(v128.load(filterTaps, 192), minus(u3, u5)),
        times(v128.load(filterTaps, 208), minus(u2, u6))),
      plus(times(v128.load(filterTaps, 224), minus(u1, u7)),
        times(v128.load(filterTaps, 240), minus(u, u8))));
    const twice = plus(u4, u4);
    const a = plus(
      plus(times(v128.load(filterTaps, 256), minus(plus(u3, u5), twice)),
        times(v128.load(filterTaps, 272), minus(plus(u2, u6), twice))),
      times(v128.load(filterTaps, 288), minus(plus(u1, u7), twice)));
    const place = (first + n - REACH) & wallMask;
    v128.store(frameAt(velocity, place), v);
    v128.store(frameAt(acceleration, place), a);
    sum = plus(sum, u);
    weighted = plus(weighted, times(within, u));
    within = plus(within, one);
    u8 = u7;
    u7 = u6;
    u6 = u5;
    u5 = u4;
    u4 = u3;
    u3 = u2;
    u2 = u1;
    u1 = u;
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
