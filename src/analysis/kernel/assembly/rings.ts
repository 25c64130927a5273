import { reserveGroups } from './groups';
import { CHUNK_FRAMES } from './source';

/**
 * The motion of the last frames, by the frame's number from the start of the lead on; a frame's
 * place is its number under the mask. Displacement reaches back a turn and its slack, velocity and
 * acceleration over the bin in hand only.
 */
export let displacement: usize = 0;
export let displacementMask: i32 = 0;
export let velocity: usize = 0;
export let acceleration: usize = 0;
export let wallMask: i32 = 0;
/** Frames of motion there are. */
export let motionEnd: i32 = 0;

export let turnFrames: f64 = 0;
export let slackFrames: f64 = 0;
export let binFrames: f64 = 0;
/** Frames of lead before the program. */
export let leadFrames: i32 = 0;

/** Interpolators for what a turn, a turn and the slack, a turn less the slack lack of whole frames. */
export const delayTaps: usize = memory.data(3 * 12 * 8, 16);
export const earliestTaps: usize = delayTaps + 12 * 8;
export const latestTaps: usize = delayTaps + 24 * 8;

function powerOfTwo(least: i32): i32 {
  let size = 4096;
  while (size < least) size <<= 1;
  return size;
}

export function setClock(turn: f64, slack: f64, bin: f64, lead: i32): void {
  turnFrames = turn;
  slackFrames = slack;
  binFrames = bin;
  leadFrames = lead;
  const inHand = <i32>Math.ceil(bin + 2 * slack) + 4 * CHUNK_FRAMES + 512;
  const wall = powerOfTwo(inHand);
  const turning = powerOfTwo(inHand + <i32>Math.ceil(turn + slack));
  wallMask = wall - 1;
  displacementMask = turning - 1;
  displacement = heap.alloc(<usize>turning << 4);
  velocity = heap.alloc(<usize>wall << 4);
  acceleration = heap.alloc(<usize>wall << 4);
  reserveGroups(turning);
  memory.fill(displacement, 0, <usize>turning << 4);
  memory.fill(velocity, 0, <usize>wall << 4);
  memory.fill(acceleration, 0, <usize>wall << 4);
}

export function advanceMotion(frames: i32): void {
  motionEnd += frames;
}
