import { frameAt, wideFrame } from './vector';

export let clippedRuns: f64 = 0;
export let firstClipFrame: f64 = -1;
/** The longest run, and where it begins. */
export let longestClip: i32 = 0;
export let longestClipFrame: f64 = -1;

const CLIPPED_RUN: i32 = 3;
/** The frame before, for a run in float. */
const before: usize = memory.data(16, 16);

let isFloat: bool = false;
let fullScale: f64 = 1;
let leftRun: i32 = 0;
let rightRun: i32 = 0;
let framesDone: f64 = 0;

export function setClipping(float: bool, full: f64): void {
  isFloat = float;
  fullScale = full;
}

/**
 * Follows the runs at full scale through frames that may hold some; in float only plateaus.
 * @param largest the largest magnitudes among them
 * @param frames as f32, which is all there is to words of up to 24 bits
 * @param doubles the same otherwise
 */
// @ts-ignore: decorator
@inline
export function countRuns(
  largest: v128, frames: usize, doubles: usize, count: i32, isWord: bool,
): void {
  const full = f64x2.splat(fullScale);
  const mayClip = v128.any_true(f64x2.ge(largest, full));
  if (mayClip || (leftRun | rightRun) != 0) {
    let previous = v128.load(before);
    for (let n = 0; n < count; n++) {
      const frame = isWord ? wideFrame(frameAt(frames, n)) : v128.load(doubles + (<usize>n << 4));
      const clipped = i64x2.bitmask(f64x2.ge(f64x2.abs(frame), full));
      const level = isFloat ? i64x2.bitmask(f64x2.eq(frame, previous)) : 3;
      leftRun = countRun((clipped & 1) != 0, (level & 1) != 0 ? leftRun + 1 : 1, n);
      rightRun = countRun((clipped & 2) != 0, (level & 2) != 0 ? rightRun + 1 : 1, n);
      previous = frame;
    }
    v128.store(before, previous);
  }
  framesDone += <f64>count;
}

function countRun(clipped: bool, run: i32, n: i32): i32 {
  if (!clipped) return 0;
  if (run < CLIPPED_RUN) return run;
  const first = framesDone + <f64>(n - run + 1);
  if (run == CLIPPED_RUN) {
    if (clippedRuns == 0) firstClipFrame = first;
    clippedRuns += 1;
  }
  if (run > longestClip || (run == longestClip && first < longestClipFrame)) {
    longestClip = run;
    longestClipFrame = first;
  }
  return run;
}
