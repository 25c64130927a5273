import { putLow, STEP_FRAMES } from './low-band';
import { holdGroup } from './groups';
import { displacement, displacementMask, mirrorStep } from './rings';
import { keepLast, levels, steps, waiting } from './recursion';
import { frameAt } from './vector';

/** Frames of the recursion that a frame of displacement needs, after it and before it. */
const AHEAD: i32 = 2;
const BEHIND: i32 = 3;
const ROOM: i32 = 4096;

/** 6 taps, each in all lanes. */
export const displacementTaps: usize = memory.data(6 * 16, 16);

/** How far the displacement is from its last, those that `differentiate` left and then the new. */
export const moves: usize = memory.data(ROOM * 8, 16);
/** Frames there are of them; the first are silence before the lead. */
export let movesWaiting: i32 = 3;
/** Number of the next frame, from the start of the lead. */
let next: i32 = 0;

/** Makes the displacement of all steps whose frames are there. */
export function displace(): void {
  let first = BEHIND;
  for (; first + STEP_FRAMES + AHEAD <= waiting; first += STEP_FRAMES) {
    displaceStep(first);
    mirrorStep(displacement, displacementMask, next);
    next += STEP_FRAMES;
    movesWaiting += STEP_FRAMES;
  }
  keepLast(waiting - first + BEHIND);
}

/** Lets all moves go but some last ones. */
export function keepLastMoves(count: i32): void {
  memory.copy(moves, frameAt(moves, movesWaiting - count), <usize>count << 3);
  movesWaiting = count;
}

function displaceStep(first: i32): void {
  const out = frameAt(displacement, next & displacementMask);
  const moveOut = frameAt(moves, movesWaiting);
  let sum = f32x4.splat(0);
  let weighted = sum;
  let within = f32x4(0, 0, 1, 1);
  const two = f32x4.splat(2);
  let most = f32x4.splat(-Infinity);
  let least = f32x4.splat(Infinity);
  for (let n = 0; n < STEP_FRAMES; n += 2) {
    const u = filtered(frameAt(levels, first + n));
    v128.store(frameAt(out, n), u);
    v128.store(frameAt(moveOut, n), filtered(frameAt(steps, first + n)));
    sum = f32x4.add(sum, u);
    weighted = f32x4.add(weighted, f32x4.mul(within, u));
    within = f32x4.add(within, two);
    most = f32x4.pmax(most, u);
    least = f32x4.pmin(least, u);
  }
  putLow(sum, weighted);
  holdGroup(next, most, least);
}

/** Two frames of the FIR. */
// @ts-ignore: decorator
@inline
function filtered(at: usize): v128 {
  const early = f32x4.add(tapped(at + 16, 0), tapped(at + 8, 16));
  const middle = f32x4.add(tapped(at, 32), tapped(at - 8, 48));
  const late = f32x4.add(tapped(at - 16, 64), tapped(at - 24, 80));
  return f32x4.add(f32x4.add(early, middle), late);
}

// @ts-ignore: decorator
@inline
function tapped(at: usize, tap: usize): v128 {
  return f32x4.mul(v128.load(displacementTaps + tap), v128.load(at));
}
