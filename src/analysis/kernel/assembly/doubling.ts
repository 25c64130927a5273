import { halveSteps } from './half-band';
import { baseSteps, keepLast, MOST_STEP_PAIRS, recursed, waiting } from './recursion';
import { CHUNK_FRAMES } from './source';
import { frameAt, moveBack } from './vector';

/** Taps that double the rate of steps, each in all lanes; always an odd number of them. */
export const stepTaps: usize = memory.data(MOST_STEP_PAIRS * 16, 16);
let stepPairs: i32 = 0;

const ROOM: i32 = CHUNK_FRAMES + 128;
/**
 * Steps of the recursion at the internal rate, those to the frames of the base rate apart from
 * those to the frames before them: what `displace` left, then the new.
 */
export const evenSteps: usize = memory.data(ROOM * 8, 16);
export const oddSteps: usize = memory.data(ROOM * 8, 16);
/** Frames of the base rate there are of them; the first is silence before the lead. */
export let stepsWaiting: i32 = 1;
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
  const odds = frameAt(oddSteps, stepsWaiting);
  const evens = frameAt(evenSteps, stepsWaiting);
  halveSteps(first, ready, stepTaps, stepPairs, odds, evens);
  stepsWaiting += ready;
  doubled += ready;
}

/** Lets all steps go but some last ones, and of the base rate what no later step needs. */
export function keepLastSteps(count: i32): void {
  moveBack(evenSteps, frameAt(evenSteps, stepsWaiting - count), count << 3);
  moveBack(oddSteps, frameAt(oddSteps, stepsWaiting - count), count << 3);
  stepsWaiting = count;
  keepLast(recursed - doubled + MOST_STEP_PAIRS);
}
