import { interleave } from './band-limit';
import { sumSteps } from './half-band';
import { baseSteps, keepLast, MOST_STEP_PAIRS, recursed, waiting } from './recursion';
import { CHUNK_FRAMES } from './source';
import { frameAt, moveBack } from './vector';

/** Taps that double the rate of steps, each in all lanes; always an odd number of them. */
export const stepTaps: usize = memory.data(MOST_STEP_PAIRS * 16, 16);
let stepPairs: i32 = 0;

const ROOM: i32 = CHUNK_FRAMES + 64;
/** What the steps beside a step add to its first half. */
const sums: usize = memory.data(ROOM * 8, 16);
/**
 * Steps of the recursion at the internal rate: those that `displace` left and then the new. The last
 * one is of an even frame.
 */
export const steps: usize = memory.data((2 * ROOM + 64) * 8, 16);
/** Frames there are of them; the first are silence before the lead. */
export let stepsWaiting: i32 = 2;
/** Frames of the base rate whose steps are doubled. */
let doubled: i32 = 0;

export function setStepPairs(pairs: i32): void {
  stepPairs = pairs;
}

/** Doubles all steps of the recursion that have their neighbours on both sides. */
export function doubleSteps(): void {
  const ready = recursed - stepPairs - doubled;
  if (ready <= 0) return;
  const first = frameAt(baseSteps, waiting - recursed + doubled);
  const out = frameAt(steps, stepsWaiting);
  const half = f32x4.splat(0.5);
  sumSteps(first, ready, stepTaps, stepPairs, sums);
  for (let n = 0; n < ready; n += 2) {
    const step = v128.load(frameAt(first, n));
    const odds = f32x4.add(f32x4.mul(half, step), v128.load(frameAt(sums, n)));
    const evens = f32x4.sub(step, odds);
    interleave(frameAt(out, 2 * n), odds, evens);
  }
  stepsWaiting += 2 * ready;
  doubled += ready;
}

/** Lets all steps go but some last ones, and of the base rate what no later step needs. */
export function keepLastSteps(count: i32): void {
  moveBack(steps, frameAt(steps, stepsWaiting - count), count << 3);
  stepsWaiting = count;
  keepLast(recursed - doubled + MOST_STEP_PAIRS);
}
