import { putLow, STEP_FRAMES } from './low-band';
import { displacement, displacementMask, mirrorStep, moves, movesMask } from './rings';
import { keepLastSteps, steps, stepsWaiting } from './doubling';
import { levels, recursed, waiting } from './recursion';
import { frameAt, pairOf, wideFrame } from './vector';

/** Steps of the recursion that a frame of displacement needs before it and after it. */
const BEHIND: i32 = 3;
const AHEAD: i32 = 2;

/** 6 taps, each in all lanes; and again as f64. */
export const displacementTaps: usize = memory.data(6 * 16, 16);
export const displacementWideTaps: usize = memory.data(6 * 16, 16);

/** Frames there are of the displacement and its moves; whole steps. */
export let movesEnd: i32 = 0;

/** Makes the displacement of all steps whose frames are there. */
export function displace(): void {
  let first = BEHIND;
  for (; first + STEP_FRAMES + AHEAD <= stepsWaiting; first += STEP_FRAMES) {
    const out = frameAt(moves, movesEnd & movesMask);
    moveStep(first, out);
    displaceStep(first, out);
    mirrorStep(moves, movesMask, movesEnd);
    mirrorStep(displacement, displacementMask, movesEnd);
    movesEnd += STEP_FRAMES;
  }
  keepLastSteps(stepsWaiting - first + BEHIND);
}

/** The moves of a step: the FIR, four frames at a time. */
function moveStep(first: i32, out: usize): void {
  const tap0 = v128.load(displacementTaps, 0);
  const tap1 = v128.load(displacementTaps, 16);
  const tap2 = v128.load(displacementTaps, 32);
  const tap3 = v128.load(displacementTaps, 48);
  const tap4 = v128.load(displacementTaps, 64);
  const tap5 = v128.load(displacementTaps, 80);
  for (let n = 0; n < STEP_FRAMES; n += 4) {
    const from = frameAt(steps, first + n - BEHIND);
    const at2 = v128.load(from, 16);
    const at3 = v128.load(from, 24);
    const at4 = v128.load(from, 32);
    const at5 = v128.load(from, 40);
    const early = f32x4.add(f32x4.mul(tap0, at5), f32x4.mul(tap1, at4));
    const middle = f32x4.add(f32x4.mul(tap2, at3), f32x4.mul(tap3, at2));
    const late = f32x4.add(
      f32x4.mul(tap4, v128.load(from, 8)), f32x4.mul(tap5, v128.load(from)));
    v128.store(frameAt(out, n), f32x4.add(f32x4.add(early, middle), late));
    const nextEarly = f32x4.add(
      f32x4.mul(tap0, v128.load(from, 56)), f32x4.mul(tap1, v128.load(from, 48)));
    const nextMiddle = f32x4.add(f32x4.mul(tap2, at5), f32x4.mul(tap3, at4));
    const nextLate = f32x4.add(f32x4.mul(tap4, at3), f32x4.mul(tap5, at2));
    v128.store(frameAt(out, n), f32x4.add(f32x4.add(nextEarly, nextMiddle), nextLate), 16);
  }
}

/** The displacement of a step out of its moves, and its sums for the low band. */
function displaceStep(first: i32, step: usize): void {
  const out = frameAt(displacement, movesEnd & displacementMask);
  let sum = f32x4.splat(0);
  let running = sum;
  let last = displacedBefore(first);
  for (let n = 0; n < STEP_FRAMES; n += 4) {
    const run = addedUp(v128.load(frameAt(step, n)));
    const further = addedUp(v128.load(frameAt(step, n), 16));
    const u = f32x4.add(last, run);
    const next = f32x4.add(last, f32x4.add(v128.shuffle<i64>(run, run, 1, 1), further));
    last = v128.shuffle<i64>(next, next, 1, 1);
    v128.store(frameAt(out, n), u);
    v128.store(frameAt(out, n), next, 16);
    sum = f32x4.add(sum, u);
    running = f32x4.add(running, sum);
    sum = f32x4.add(sum, next);
    running = f32x4.add(running, sum);
  }
  putLow(sum, running);
}

/** Two moves, the second with the first in it. */
// @ts-ignore: decorator
@inline
function addedUp(moves: v128): v128 {
  return f32x4.add(moves, v128.shuffle<i64>(f32x4.splat(0), moves, 0, 2));
}

/**
 * The displacement of the frame before a step, twice: by the FIR itself, so that no moves add up
 * longer than a step. Between two frames of the base rate the recursion is a step after the first.
 */
function displacedBefore(first: i32): v128 {
  const at = levels + (<usize>(waiting - recursed + (movesEnd >> 1)) << 4);
  const step = frameAt(steps, first);
  const taps = displacementWideTaps;
  const level = v128.load(at);
  const level1 = v128.load(at - 16);
  const level2 = v128.load(at - 32);
  const after = f64x2.add(level, wideFrame(step + 8));
  const before = f64x2.add(level1, wideFrame(step - 8));
  const before2 = f64x2.add(level2, wideFrame(step - 24));
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
