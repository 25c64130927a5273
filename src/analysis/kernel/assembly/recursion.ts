import { CHUNK_FRAMES } from './source';
import { seekTruePeak } from './true-peak';
import { exchanged, firstOf, frameAt, pairOf, secondOf } from './vector';

/** Frames kept of the program for the next chunk. */
const KEPT: i32 = 16;
/** Frames around a true peak. */
const PEAK_MARGIN: i32 = 8;
const ROOM: i32 = 2 * CHUNK_FRAMES + 256;

/** Zeros after their leading 1 (2), poles after theirs (3); each in both lanes. */
export const recursionTaps: usize = memory.data(5 * 16, 16);

const program: usize = memory.data(ROOM * 8, 16);

/** The recursion's output and what it differs by from its last: those that `displace` left. */
export const levels: usize = memory.data(ROOM * 8, 16);
export const steps: usize = memory.data(ROOM * 8, 16);
/** Frames there are of both; the first are silence before the lead. */
export let waiting: i32 = 3;

/** Two inputs back, three outputs back; then two of the elliptical filter's in- and outputs. */
const delays: usize = memory.data(9 * 16, 16);
const gains: usize = memory.data(16, 16);
const elliptical: usize = memory.data(5 * 16, 16);
let swap: bool = false;
let isElliptical: bool = false;

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

/** Where the caller writes the next frames of the program. */
export function programRoom(): usize {
  return frameAt(program, KEPT);
}

/** Runs the recursion over the frames in `programRoom()`, an even number. */
export function recurse(count: i32): void {
  seekTruePeak(program, KEPT - PEAK_MARGIN, KEPT - PEAK_MARGIN + count);
  if (swap || isElliptical) run(count, false);
  else run(count, true);
  waiting += count;
  memory.copy(program, frameAt(program, count), KEPT << 3);
}

/** Lets all go but some last frames. */
export function keepLast(count: i32): void {
  memory.copy(levels, frameAt(levels, waiting - count), <usize>count << 3);
  memory.copy(steps, frameAt(steps, waiting - count), <usize>count << 3);
  waiting = count;
}

// @ts-ignore: decorator
@inline
function run(count: i32, plain: bool): void {
  const gain = v128.load(gains);
  const levelOut = frameAt(levels, waiting);
  const stepOut = frameAt(steps, waiting);
  let p1 = v128.load(delays, 0);
  let p2 = v128.load(delays, 16);
  let q1 = v128.load(delays, 32);
  let q2 = v128.load(delays, 48);
  let q3 = v128.load(delays, 64);
  for (let n = 0; n < count; n += 2) {
    const pair = v128.load(frameAt(programRoom(), n));
    const even = plain ? f64x2.mul(gain, firstOf(pair)) : wired(firstOf(pair), gain);
    const odd = plain ? f64x2.mul(gain, secondOf(pair)) : wired(secondOf(pair), gain);
    const q = filtered(even, p1, p2, q1, q2, q3);
    const next = filtered(odd, even, p1, q, q1, q2);
    v128.store(frameAt(levelOut, n), pairOf(q, next));
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

/** What waits for the last output comes last. */
// @ts-ignore: decorator
@inline
function filtered(p: v128, p1: v128, p2: v128, q1: v128, q2: v128, q3: v128): v128 {
  const zeros = f64x2.add(
    f64x2.mul(v128.load(recursionTaps, 0), p1), f64x2.mul(v128.load(recursionTaps, 16), p2));
  const past = f64x2.add(
    f64x2.mul(v128.load(recursionTaps, 48), q2), f64x2.mul(v128.load(recursionTaps, 64), q3));
  const known = f64x2.sub(f64x2.add(p, zeros), past);
  return f64x2.sub(known, f64x2.mul(v128.load(recursionTaps, 32), q1));
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
