import { CHUNK_FRAMES } from './source';
import { PEAK_REACH, seekTruePeak } from './true-peak';
import { exchanged, frameAt, moveBack, pairOf, wideFrame } from './vector';

/** Frames kept of the program for the next chunk. */
const KEPT: i32 = 64;
const ROOM: i32 = CHUNK_FRAMES + 256;

/** Zeros after their leading 1 (2), poles after theirs (3), skips (3); each in both lanes. */
export const recursionTaps: usize = memory.data(8 * 16, 16);

/** The program at the base rate: what is kept, then the new. */
const program: usize = memory.data(ROOM * 8, 16);
/** Frames that wait for another to be taken with: 0 or 1. */
let single: i32 = 0;

/** Most taps that double the rate of steps, and frames kept before those that are not doubled. */
export const MOST_STEP_PAIRS: i32 = 24;
/** The recursion's output, f64x2, and what it differs by from its last, f32; at the base rate. */
export const levels: usize = memory.data(ROOM * 16, 16);
export const baseSteps: usize = memory.data(ROOM * 8, 16);
/** Frames there are of both; the first are silence before the lead. */
export let waiting: i32 = MOST_STEP_PAIRS;
/** Number of the frame after them, from the start of the lead. */
export let recursed: i32 = 0;

/** Two inputs back, three outputs back; then two of the elliptical filter's in- and outputs. */
const delays: usize = memory.data(9 * 16, 16);
const gains: usize = memory.data(16, 16);
const elliptical: usize = memory.data(5 * 16, 16);
let swap: bool = false;
let isElliptical: bool = false;
/** True where the channels are cut as they are. */
let isPlain: bool = false;

export function setWiring(swapped: bool, leftGain: f64, rightGain: f64): void {
  swap = swapped;
  store<f64>(gains, leftGain);
  store<f64>(gains, rightGain, 8);
  isPlain = !swapped && leftGain == 1 && rightGain == 1;
}

export function setElliptical(b0: f64, b1: f64, b2: f64, a1: f64, a2: f64): void {
  isElliptical = true;
  isPlain = false;
  v128.store(elliptical, f64x2.splat(b0), 0);
  v128.store(elliptical, f64x2.splat(b1), 16);
  v128.store(elliptical, f64x2.splat(b2), 32);
  v128.store(elliptical, f64x2.splat(a1), 48);
  v128.store(elliptical, f64x2.splat(a2), 64);
}

/** Where the caller writes the next frames of the program. */
export function programRoom(): usize {
  return frameAt(program, KEPT);
}

/** Runs the recursion over the frames in `programRoom()`, two at a time. */
export function recurse(count: i32): void {
  seekTruePeak(program, KEPT - PEAK_REACH, KEPT - PEAK_REACH + count);
  const first = frameAt(program, KEPT - single);
  const ready = (count + single) & ~1;
  if (isPlain) {
    runPlain(first, ready);
  } else {
    cut(first, ready);
    runCut(first, ready);
  }
  single += count - ready;
  waiting += ready;
  recursed += ready;
  moveBack(program, frameAt(program, count), KEPT << 3);
}

/** Lets all go but some last frames. */
export function keepLast(count: i32): void {
  moveBack(levels, levels + (<usize>(waiting - count) << 4), count << 4);
  moveBack(baseSteps, frameAt(baseSteps, waiting - count), count << 3);
  waiting = count;
}

/** Writes the channels as they are to be cut, f64x2, where the recursion then writes its output. */
function cut(first: usize, count: i32): void {
  const gain = v128.load(gains);
  const out = levels + (<usize>waiting << 4);
  for (let n = 0; n < count; n++) {
    v128.store(out + (<usize>n << 4), wired(wideFrame(frameAt(first, n)), gain));
  }
}

// Two loops, since one with both inputs in it would keep its past in memory.

function runCut(first: usize, count: i32): void {
  run(first, count, false);
}

function runPlain(first: usize, count: i32): void {
  run(first, count, true);
}

// @ts-ignore: decorator
@inline
function run(first: usize, count: i32, plain: bool): void {
  const levelOut = levels + (<usize>waiting << 4);
  const stepOut = frameAt(baseSteps, waiting);
  const zero1 = v128.load(recursionTaps, 0);
  const zero2 = v128.load(recursionTaps, 16);
  const pole1 = v128.load(recursionTaps, 32);
  const pole2 = v128.load(recursionTaps, 48);
  const pole3 = v128.load(recursionTaps, 64);
  const skip1 = v128.load(recursionTaps, 80);
  const skip2 = v128.load(recursionTaps, 96);
  const skip3 = v128.load(recursionTaps, 112);
  let p1 = v128.load(delays, 0);
  let p2 = v128.load(delays, 16);
  let q1 = v128.load(delays, 32);
  let q2 = v128.load(delays, 48);
  let q3 = v128.load(delays, 64);
  for (let n = 0; n < count; n += 2) {
    const from = frameAt(first, n);
    const level = levelOut + (<usize>n << 4);
    const even = plain ? wideFrame(from) : v128.load(level);
    const odd = plain ? wideFrame(from + 8) : v128.load(level, 16);
    // Both outputs from the same past, the latest of it last, so that neither waits for the other;
    // what is known longest comes first, and is not waited for either.
    const input = f64x2.add(even, both(zero1, p1, zero2, p2));
    const early = f64x2.sub(input, f64x2.mul(pole3, q3));
    const q = f64x2.sub(f64x2.sub(early, f64x2.mul(pole2, q2)), f64x2.mul(pole1, q1));
    const inputNext = f64x2.add(odd, both(zero1, even, zero2, p1));
    const skipped = f64x2.sub(inputNext, f64x2.mul(pole1, input));
    const earlyNext = f64x2.add(skipped, f64x2.mul(skip3, q3));
    const next = f64x2.add(f64x2.add(earlyNext, f64x2.mul(skip2, q2)), f64x2.mul(skip1, q1));
    v128.store(level, q);
    v128.store(level, next, 16);
    v128.store(frameAt(stepOut, n), pairOf(f64x2.sub(q, q1), f64x2.sub(next, q)));
    p2 = even;
    p1 = odd;
    q3 = q1;
    q2 = q;
    q1 = next;
  }
  v128.store(delays, p1, 0);
  v128.store(delays, p2, 16);
  v128.store(delays, q1, 32);
  v128.store(delays, q2, 48);
  v128.store(delays, q3, 64);
}

/** Two numbers by their taps. */
// @ts-ignore: decorator
@inline
function both(tap: v128, a: v128, otherTap: v128, b: v128): v128 {
  return f64x2.add(f64x2.mul(tap, a), f64x2.mul(otherTap, b));
}

/** The channels as they are to be cut: exchanged if wired so, with their gains, and bass mono. */
function wired(frame: v128, gain: v128): v128 {
  const cut = f64x2.mul(gain, swap ? exchanged(frame) : frame);
  if (!isElliptical) return cut;
  // A high-pass on the difference: one lane carries it, the other its negative.
  const half = f64x2.splat(0.5);
  const other = exchanged(cut);
  const side = f64x2.mul(half, f64x2.sub(cut, other));
  const state = delays + 5 * 16;
  const zeros = f64x2.add(
    f64x2.add(
      f64x2.mul(v128.load(elliptical, 0), side),
      f64x2.mul(v128.load(elliptical, 16), v128.load(state, 0))),
    f64x2.mul(v128.load(elliptical, 32), v128.load(state, 16)));
  const high = f64x2.sub(
    f64x2.sub(zeros, f64x2.mul(v128.load(elliptical, 48), v128.load(state, 32))),
    f64x2.mul(v128.load(elliptical, 64), v128.load(state, 48)));
  v128.store(state, v128.load(state, 0), 16);
  v128.store(state, side, 0);
  v128.store(state, v128.load(state, 32), 48);
  v128.store(state, high, 32);
  return f64x2.add(f64x2.mul(half, f64x2.add(cut, other)), high);
}
