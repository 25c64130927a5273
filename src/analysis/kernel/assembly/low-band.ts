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
 * @param even Σx of the step's every fourth frame from its first on, and from its third
 * @param odd from its second on, and from its fourth
 * @param evenRunning Σ of the 8 values that each of them had on its way, and of the odd
 */
export function putLow(even: v128, odd: v128, evenRunning: v128, oddRunning: v128): void {
  const second = firstOf(odd);
  const third = secondOf(even);
  const fourth = secondOf(odd);
  const sum = f64x2.add(f64x2.add(firstOf(even), second), f64x2.add(third, fourth));
  const running = f64x2.add(
    f64x2.add(firstOf(evenRunning), firstOf(oddRunning)),
    f64x2.add(secondOf(evenRunning), secondOf(oddRunning)));
  // Of four frames, the first weighs four times what it ran for, the others 1, 2 and 3 less.
  const less = f64x2.add(
    f64x2.add(second, f64x2.mul(f64x2.splat(2), third)), f64x2.mul(f64x2.splat(3), fourth));
  const falling = f64x2.sub(f64x2.mul(f64x2.splat(4), running), less);
  const triangle = f64x2.add(falling, v128.load(rising));
  const scale = f64x2.splat(1 / <f64>(STEP_FRAMES * STEP_FRAMES));
  v128.store(lowFrames + (<usize>lowCount << 4), f64x2.mul(triangle, scale));
  lowCount++;
  v128.store(rising, f64x2.sub(f64x2.mul(f64x2.splat(<f64>STEP_FRAMES), sum), falling));
}
