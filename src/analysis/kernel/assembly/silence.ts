import { frameAt, wideFrame } from './vector';

/** Runs of silence that ended since the last push: first frame and frames of each. */
export const silentRuns: usize = memory.data(64 * 16, 16);
export let silentCount: i32 = 0;
/** Frames of silence that the stretch that is counted begins with; −1 while it is silent. */
export let silentHead: f64 = -1;
/** Frames of silence up to the last frame. */
export let silentTail: f64 = 0;

let leastFrames: f64 = 1;
let framesBefore: f64 = 0;

/** @param least frames of the shortest run that counts: more than a chunk has */
export function setSilence(least: f64): void {
  leastFrames = least;
}

export function forgetSilentRuns(): void {
  silentCount = 0;
}

/**
 * Follows the runs of frames that are exactly zero in both channels. None that counts lies within
 * one chunk, so that only the silence at its ends is looked for.
 * @param isSilent whether all of the frames are
 * @param frames as f32, which is all there is to words of up to 24 bits
 * @param doubles the same otherwise
 */
export function followSilence(
  isSilent: bool, frames: usize, doubles: usize, count: i32, isWord: bool,
): void {
  if (isSilent) {
    silentTail += <f64>count;
  } else {
    let first = 0;
    while (isSilentAt(frames, doubles, first, isWord)) first++;
    let last = count - 1;
    while (isSilentAt(frames, doubles, last, isWord)) last--;
    endRun(silentTail + <f64>first, framesBefore + <f64>first);
    silentTail = <f64>(count - 1 - last);
  }
  framesBefore += <f64>count;
}

function endRun(run: f64, end: f64): void {
  if (silentHead < 0) {
    silentHead = run;
  } else if (run >= leastFrames) {
    const at = silentRuns + (<usize>silentCount << 4);
    store<f64>(at, end - run);
    store<f64>(at, run, 8);
    silentCount += 1;
  }
}

// @ts-ignore: decorator
@inline
function isSilentAt(frames: usize, doubles: usize, n: i32, isWord: bool): bool {
  const frame = isWord ? wideFrame(frameAt(frames, n)) : v128.load(doubles + (<usize>n << 4));
  return !v128.any_true(f64x2.ne(frame, f64x2.splat(0)));
}
