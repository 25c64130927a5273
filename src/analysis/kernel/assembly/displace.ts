import { putLow, STEP_FRAMES } from './low-band';
import { holdGroup } from './groups';
import { displacement, displacementMask, mirrorStep } from './rings';
import { BEHIND, keepLast, levels, steps, waiting } from './recursion';
import { frameAt, moveBack, pairOf } from './vector';

/** Frames of the recursion that a frame of displacement needs after it. */
const AHEAD: i32 = 2;
const ROOM: i32 = 4096;

/** 6 taps, each in all lanes; and again as f64. */
export const displacementTaps: usize = memory.data(6 * 16, 16);
export const displacementWideTaps: usize = memory.data(6 * 16, 16);

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
  moveBack(moves, frameAt(moves, movesWaiting - count), count << 3);
  movesWaiting = count;
}

function displaceStep(first: i32): void {
  const out = frameAt(displacement, next & displacementMask);
  const moveOut = frameAt(moves, movesWaiting);
  let last = displacedBefore(first);
  let sum = f32x4.splat(0);
  let weighted = sum;
  let within = f32x4(0, 0, 1, 1);
  const two = f32x4.splat(2);
  const tap0 = v128.load(displacementTaps, 0);
  const tap1 = v128.load(displacementTaps, 16);
  const tap2 = v128.load(displacementTaps, 32);
  const tap3 = v128.load(displacementTaps, 48);
  const tap4 = v128.load(displacementTaps, 64);
  const tap5 = v128.load(displacementTaps, 80);
  // The group's bounds take the frame before it as well.
  let most = v128.shuffle<i64>(last, last, 1, 1);
  let least = most;
  for (let n = 0; n < STEP_FRAMES; n += 4) {
    const from = frameAt(steps, first + n - BEHIND + 1);
    const move = filtered(from, tap0, tap1, tap2, tap3, tap4, tap5);
    const nextMove = filtered(from + 16, tap0, tap1, tap2, tap3, tap4, tap5);
    v128.store(frameAt(moveOut, n), move);
    v128.store(frameAt(moveOut, n), nextMove, 16);
    const u = moved(last, move);
    const next = moved(u, nextMove);
    last = next;
    v128.store(frameAt(out, n), u);
    v128.store(frameAt(out, n), next, 16);
    const after = f32x4.add(within, two);
    sum = f32x4.add(f32x4.add(sum, u), next);
    weighted = f32x4.add(f32x4.add(weighted, f32x4.mul(within, u)), f32x4.mul(after, next));
    within = f32x4.add(after, two);
    most = f32x4.pmax(most, f32x4.pmax(u, next));
    least = f32x4.pmin(least, f32x4.pmin(u, next));
  }
  putLow(sum, weighted);
  holdGroup(next, most, least);
}

/** Two frames of the FIR. @param from the earliest frame that they need */
// @ts-ignore: decorator
@inline
function filtered(
  from: usize, tap0: v128, tap1: v128, tap2: v128, tap3: v128, tap4: v128, tap5: v128,
): v128 {
  const early = f32x4.add(
    f32x4.mul(tap0, v128.load(from, 40)), f32x4.mul(tap1, v128.load(from, 32)));
  const middle = f32x4.add(
    f32x4.mul(tap2, v128.load(from, 24)), f32x4.mul(tap3, v128.load(from, 16)));
  const late = f32x4.add(
    f32x4.mul(tap4, v128.load(from, 8)), f32x4.mul(tap5, v128.load(from)));
  return f32x4.add(f32x4.add(early, middle), late);
}

/** Two frames of displacement, from the second of the last two on by two moves. */
// @ts-ignore: decorator
@inline
function moved(last: v128, move: v128): v128 {
  const both = f32x4.add(move, v128.shuffle<i64>(f32x4.splat(0), move, 0, 2));
  return f32x4.add(v128.shuffle<i64>(last, last, 1, 1), both);
}

/** The displacement before a step, by the FIR itself, so that no moves add up longer than a step. */
function displacedBefore(first: i32): v128 {
  const from = levels + (<usize>(first - BEHIND) << 4);
  const taps = displacementWideTaps;
  const early = f64x2.add(wide(taps, from + 80), wide(taps + 16, from + 64));
  const middle = f64x2.add(wide(taps + 32, from + 48), wide(taps + 48, from + 32));
  const late = f64x2.add(wide(taps + 64, from + 16), wide(taps + 80, from));
  const u = f64x2.add(f64x2.add(early, middle), late);
  return pairOf(u, u);
}

// @ts-ignore: decorator
@inline
function wide(tap: usize, at: usize): v128 {
  return f64x2.mul(v128.load(tap), v128.load(at));
}
