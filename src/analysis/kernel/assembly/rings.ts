import { reserveGroups } from './groups';
import { CHUNK_FRAMES } from './source';
import { frameAt } from './vector';
import { reservePeaks } from './wall-peaks';

/**
 * Frames of a ring's start that stand once more behind its end, so that a run of as many can be
 * read from any place without a mask at each frame; whole steps.
 */
export const RUN_FRAMES: i32 = 64;
export const BINS_PER_QUARTER: i32 = 16;

/**
 * The motion of the last frames, by the frame's number from the start of the lead on; a frame's
 * place is its number under the mask. Displacement reaches back a turn and its slack. How far each
 * frame of it is from its last reaches back a quarter, those of even frames and the odd ones after
 * them apart, by half the number: velocity and acceleration are made of that, wherever they are
 * looked at once more.
 */
export let displacement: usize = 0;
export let displacementMask: i32 = 0;
export let evenMoves: usize = 0;
export let oddMoves: usize = 0;
export let movesMask: i32 = 0;
/** Frames of motion there are whose velocity and acceleration are measured; whole steps. */
export let motionEnd: i32 = 0;

export let turnFrames: f64 = 0;
export let slackFrames: f64 = 0;
export let binFrames: f64 = 0;
/**
 * Number of the frame that the first bin of the program begins at: the lead's length, or less if
 * the kernel begins later in the program.
 */
export let leadFrames: i32 = 0;
/** Bins of the program before the first that is measured, whole quarters. */
export let firstBin: i32 = 0;

/** Interpolators for what a turn, a turn and the slack, a turn less the slack lack of whole frames. */
export const delayTaps: usize = memory.data(3 * 12 * 8, 16);
export const earliestTaps: usize = delayTaps + 12 * 8;
export const latestTaps: usize = delayTaps + 24 * 8;

/** Where a measured bin begins, frames from the start of the lead. */
// @ts-ignore: decorator
@inline
export function edge(index: i32): f64 {
  return <f64>leadFrames + <f64>(firstBin + index) * binFrames;
}

function emptyRing(frames: i32): usize {
  const bytes = <usize>(frames + RUN_FRAMES) << 3;
  const ring = heap.alloc(bytes);
  memory.fill(ring, 0, bytes);
  return ring;
}

/** Puts a step's frames just written at a ring's start behind its end as well. */
export function mirrorStep(ring: usize, mask: i32, first: i32, frames: i32): void {
  const at = first & mask;
  if (at >= RUN_FRAMES) return;
  memory.copy(frameAt(ring, mask + 1 + at), frameAt(ring, at), <usize>frames << 3);
}

/** Where the next ring would begin: behind all memory that is used. */
export function memoryUsed(): usize {
  return heap.alloc(0);
}

function powerOfTwo(least: i32): i32 {
  let size = 4096;
  while (size < least) size <<= 1;
  return size;
}

export function setClock(turn: f64, slack: f64, bin: f64, lead: i32, first: i32): void {
  turnFrames = turn;
  slackFrames = slack;
  binFrames = bin;
  leadFrames = lead;
  firstBin = first;
  const inHand = <i32>Math.ceil(bin + 2 * slack) + 4 * CHUNK_FRAMES + 512;
  const turning = powerOfTwo(inHand + <i32>Math.ceil(turn + slack));
  const quarter = powerOfTwo(<i32>Math.ceil(BINS_PER_QUARTER * bin) + 4 * CHUNK_FRAMES + 512);
  displacementMask = turning - 1;
  movesMask = quarter / 2 - 1;
  displacement = emptyRing(turning);
  evenMoves = emptyRing(quarter / 2);
  oddMoves = emptyRing(quarter / 2);
  reserveGroups(turning);
  reservePeaks(quarter);
}

export function advanceMotion(frames: i32): void {
  motionEnd += frames;
}
