import { firstOf, secondOf } from './vector';

/** Frames of the internal rate a frame of the low band; also a step of the motion. */
export const STEP_FRAMES: i32 = 32;

const LOW_CAPACITY: i32 = 4096;
/** Decimated displacement that is complete, from the start of the lead on. */
export const lowFrames: usize = memory.data(LOW_CAPACITY * 16, 16);
export let lowCount: i32 = 0;
/** Σi·x of the last step, i from 0. */
const rising: usize = memory.data(16, 16);

export function takeLow(): void {
  lowCount = 0;
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
