import { evenSteps, keepLastSteps, oddSteps, stepsWaiting } from './doubling';
import { putLow, STEP_FRAMES } from './low-band';
import { levels, recursed, waiting } from './recursion';
import {
  displacement, displacementMask, evenMoves, mirrorStep, movesMask, oddMoves,
} from './rings';
import { frameAt, interleave, pairOf, wideFrame } from './vector';

/** Frames of the base rate whose steps those of a frame's moves are, before it and after it. */
const BEHIND: i32 = 1;
const AHEAD: i32 = 2;

/** 6 taps, each in all lanes; and again as f64. */
export const displacementTaps: usize = memory.data(6 * 16, 16);
export const displacementWideTaps: usize = memory.data(6 * 16, 16);

/** Frames there are of the displacement and its moves; whole steps. */
export let movesEnd: i32 = 0;

/** Steps that may be displaced and not yet differentiated, and more; a power of two. */
const STEPS: i32 = 128;
/**
 * Per step the lowest of u_L and −u_R, then the highest and the lowest of `both`, the frame before it
 * among them: nobody asks for the others.
 */
const stepExtremes: usize = memory.data(STEPS * 64, 16);

/** Address of a step's extremes: three vectors of two frames each. */
export function extremesOf(first: i32): usize {
  return stepExtremes + (<usize>((first / STEP_FRAMES) & (STEPS - 1)) << 6);
}

/** Makes the displacement of all steps whose frames are there. */
export function displace(): void {
  let first = BEHIND;
  for (; first + STEP_FRAMES / 2 + AHEAD <= stepsWaiting; first += STEP_FRAMES / 2) {
    const at = movesEnd >> 1;
    const evens = frameAt(evenMoves, at & movesMask);
    const odds = frameAt(oddMoves, at & movesMask);
    moveStep(first, evens, odds);
    displaceStep(first, evens, odds, frameAt(displacement, movesEnd & displacementMask));
    mirrorStep(evenMoves, movesMask, at, STEP_FRAMES / 2);
    mirrorStep(oddMoves, movesMask, at, STEP_FRAMES / 2);
    mirrorStep(displacement, displacementMask, movesEnd, STEP_FRAMES);
    movesEnd += STEP_FRAMES;
  }
  keepLastSteps(stepsWaiting - first + BEHIND);
}

/** The moves to the even frames of a step and to the odd ones after them: the FIR. */
function moveStep(first: i32, evens: usize, odds: usize): void {
  const tap0 = v128.load(displacementTaps, 0);
  const tap1 = v128.load(displacementTaps, 16);
  const tap2 = v128.load(displacementTaps, 32);
  const tap3 = v128.load(displacementTaps, 48);
  const tap4 = v128.load(displacementTaps, 64);
  const tap5 = v128.load(displacementTaps, 80);
  const fromEven = frameAt(evenSteps, first - BEHIND);
  const fromOdd = frameAt(oddSteps, first - BEHIND);
  for (let n = 0; n < STEP_FRAMES / 2; n += 2) {
    const even = frameAt(fromEven, n);
    const odd = frameAt(fromOdd, n);
    const lastEven = v128.load(even);
    const atEven = v128.load(even, 8);
    const nextEven = v128.load(even, 16);
    const lastOdd = v128.load(odd);
    const beforeOdd = v128.load(odd, 8);
    const afterOdd = v128.load(odd, 16);
    v128.store(frameAt(evens, n), f32x4.add(
      f32x4.add(weighed(tap0, nextEven, tap1, afterOdd), weighed(tap2, atEven, tap3, beforeOdd)),
      weighed(tap4, lastEven, tap5, lastOdd)));
    v128.store(frameAt(odds, n), f32x4.add(
      f32x4.add(
        weighed(tap0, v128.load(odd, 24), tap1, nextEven), weighed(tap2, afterOdd, tap3, atEven)),
      weighed(tap4, beforeOdd, tap5, lastEven)));
  }
}

/** Two steps by their taps. */
// @ts-ignore: decorator
@inline
function weighed(tap: v128, a: v128, otherTap: v128, b: v128): v128 {
  return f32x4.add(f32x4.mul(tap, a), f32x4.mul(otherTap, b));
}

/**
 * The displacement of a step out of its moves, its sums for the low band and its extremes.
 * @param out given and not made here: V8 would make it anew in each round
 */
function displaceStep(first: i32, evens: usize, odds: usize, out: usize): void {
  const zero = f32x4.splat(0);
  let evenSum = zero;
  let oddSum = zero;
  let evenRunning = zero;
  let oddRunning = zero;
  let last = displacedBefore(first);
  let least = rightTurned(last);
  let mostBoth = both(last, least);
  let leastBoth = mostBoth;
  for (let n = 0; n < STEP_FRAMES / 2; n += 2) {
    const toEven = v128.load(frameAt(evens, n));
    const pair = f32x4.add(toEven, v128.load(frameAt(odds, n)));
    const firstPair = v128.shuffle<i64>(zero, pair, 0, 2);
    const u = f32x4.add(last, f32x4.add(firstPair, toEven));
    const next = f32x4.add(last, f32x4.add(firstPair, pair));
    last = v128.shuffle<i64>(next, next, 1, 1);
    interleave(frameAt(out, 2 * n), u, next);
    evenSum = f32x4.add(evenSum, u);
    oddSum = f32x4.add(oddSum, next);
    evenRunning = f32x4.add(evenRunning, evenSum);
    oddRunning = f32x4.add(oddRunning, oddSum);
    const turned = rightTurned(u);
    const nextTurned = rightTurned(next);
    least = f32x4.pmin(least, f32x4.pmin(turned, nextTurned));
    const b = both(u, turned);
    const nextB = both(next, nextTurned);
    mostBoth = f32x4.pmax(mostBoth, f32x4.pmax(b, nextB));
    leastBoth = f32x4.pmin(leastBoth, f32x4.pmin(b, nextB));
  }
  const extremes = extremesOf(movesEnd);
  v128.store(extremes, least);
  v128.store(extremes, mostBoth, 16);
  v128.store(extremes, leastBoth, 32);
  putLow(evenSum, oddSum, evenRunning, oddRunning);
}

/** Sum of the walls and left less right, of two frames and of the same by `rightTurned`. */
// @ts-ignore: decorator
@inline
export function both(pair: v128, turned: v128): v128 {
  return f32x4.add(v128.shuffle<i32>(pair, pair, 1, 0, 3, 2), turned);
}

/** Left, and the negative of right. */
// @ts-ignore: decorator
@inline
export function rightTurned(pair: v128): v128 {
  return v128.xor(pair, f32x4(0, -0.0, 0, -0.0));
}

/**
 * The displacement of the frame before a step, twice: by the FIR itself, so that no moves add up
 * longer than a step. Between two frames of the base rate the recursion is a step after the first.
 */
function displacedBefore(first: i32): v128 {
  const at = levels + (<usize>(waiting - recursed + (movesEnd >> 1)) << 4);
  const step = frameAt(oddSteps, first);
  const taps = displacementWideTaps;
  const level = v128.load(at);
  const level1 = v128.load(at - 16);
  const level2 = v128.load(at - 32);
  const after = f64x2.add(level, wideFrame(step + 8));
  const before = f64x2.add(level1, wideFrame(step));
  const before2 = f64x2.add(level2, wideFrame(step - 8));
  const early = f64x2.add(wide(taps, after), wide(taps + 16, level));
  const middle = f64x2.add(wide(taps + 32, before), wide(taps + 48, level1));
  const late = f64x2.add(wide(taps + 64, before2), wide(taps + 80, level2));
  const u = f64x2.add(f64x2.add(early, middle), late);
  return pairOf(u, u);
}

// @ts-ignore: decorator
@inline
function wide(tap: usize, level: v128): v128 {
  return f64x2.mul(v128.load(tap), level);
}
