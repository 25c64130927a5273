import { WINDOW_FRAMES } from './low-transform';
import { firstOf, secondOf } from './vector';

/** Frames of the internal rate a frame of the low band; also a step of the motion. */
export const STEP_FRAMES: i32 = 32;

const LOW_CAPACITY: i32 = 4096;
/** Most frames that come between two looks at the windows. */
const LOW_CHUNK: i32 = 128;
/** Decimated displacement: what a window may still need, then what came since. */
export const lowFrames: usize = memory.data(LOW_CAPACITY * 16, 16);
export let lowCount: i32 = 0;
/** Number of the first of them among those of the program. */
export let lowFirst: i32 = 0;
/** Frames of the lead that are still to be left out. */
let lead: i32 = 0;
/** Σi·x of the last step, i from 0. */
const rising: usize = memory.data(16, 16);

/**
 * Begins with silence.
 * @param leadFrames decimated frames of the lead
 * @param first number of the frame that comes after it
 */
export function startLow(leadFrames: i32, first: i32): void {
  lead = leadFrames;
  lowFirst = first - WINDOW_FRAMES;
  lowCount = WINDOW_FRAMES - leadFrames;
}

/** Silences the lead, once it is there: the low band leaves out what the filters ring before. */
export function silenceLead(): void {
  if (lead == 0 || lowCount < WINDOW_FRAMES) return;
  const bytes = <usize>lead << 4;
  memory.fill(lowFrames + (WINDOW_FRAMES << 4) - bytes, 0, bytes);
  lead = 0;
}

/** Lets go what lies before a window that ends with the next frame. */
export function forgetLow(): void {
  if (lowCount <= LOW_CAPACITY - LOW_CHUNK) return;
  const gone = lowCount - WINDOW_FRAMES - LOW_CHUNK;
  memory.copy(
    lowFrames, lowFrames + (<usize>gone << 4), (WINDOW_FRAMES + LOW_CHUNK) << 4);
  lowFirst += gone;
  lowCount -= gone;
}

/**
 * Average over the triangle that ends with a step: its falling half, the last one's rising.
 * @param sum Σx of the step's even frames, and of its odd ones
 * @param running Σ of the 16 values that each of them had on its way
 */
// @ts-ignore: decorator
@inline
export function putLow(sum: v128, running: v128): void {
  const odds = secondOf(sum);
  const all = f64x2.mul(f64x2.splat(<f64>STEP_FRAMES), f64x2.add(firstOf(sum), odds));
  // Of two frames, the even one weighs twice what it ran for and the odd one 1 less.
  const twice = f64x2.mul(f64x2.splat(2), f64x2.add(firstOf(running), secondOf(running)));
  const falling = f64x2.sub(twice, odds);
  const triangle = f64x2.add(falling, v128.load(rising));
  const scale = f64x2.splat(1 / <f64>(STEP_FRAMES * STEP_FRAMES));
  v128.store(lowFrames + (<usize>lowCount << 4), f64x2.mul(triangle, scale));
  lowCount++;
  v128.store(rising, f64x2.sub(all, falling));
}
