import { GROUP, GROUP_SHIFT } from './groups';
import { RIPPLE } from './interpolate';
import { displacement, displacementMask } from './rings';
import { frameAt, largerFrame } from './vector';

// The frames of a group as f32, by which those are chosen that are looked at as f64.

const heights: usize = memory.data(GROUP * 4, 16);

/** Takes left·u_L + right·u_R of a group's frames, both 0 or ±1; gives the highest. */
export function takeWalls(group: i32, left: f32, right: f32): f64 {
  const run = runOf(group << GROUP_SHIFT);
  const lefts = f32x4.splat(left);
  const rights = f32x4.splat(right);
  let most = f32x4.splat(-Infinity);
  for (let n = 0; n < GROUP; n += 4) {
    const pair = v128.load(frameAt(run, n));
    const next = v128.load(frameAt(run, n), 16);
    const height = f32x4.add(
      f32x4.mul(lefts, v128.shuffle<i32>(pair, next, 0, 2, 4, 6)),
      f32x4.mul(rights, v128.shuffle<i32>(pair, next, 1, 3, 5, 7)));
    v128.store(heights + (<usize>n << 2), height);
    most = f32x4.pmax(most, height);
  }
  return highestOf(most);
}

/**
 * Takes u_R of a group's frames less the lower u_L of two neighbours; gives the highest.
 * @param delay to the later of the neighbours, frames
 * @param before frames from it to the sooner one, 0 or 1
 */
export function takeClosing(group: i32, delay: i32, before: i32): f64 {
  const run = runOf(group << GROUP_SHIFT);
  const late = runOf((group << GROUP_SHIFT) - delay);
  const early = runOf((group << GROUP_SHIFT) - delay - before);
  let most = f32x4.splat(-Infinity);
  for (let n = 0; n < GROUP; n += 4) {
    const lefts = f32x4.pmin(leftsAt(frameAt(late, n)), leftsAt(frameAt(early, n)));
    const pair = v128.load(frameAt(run, n));
    const rights = v128.shuffle<i32>(pair, v128.load(frameAt(run, n), 16), 1, 3, 5, 7);
    const height = f32x4.sub(rights, lefts);
    v128.store(heights + (<usize>n << 2), height);
    most = f32x4.pmax(most, height);
  }
  return highestOf(most);
}

// @ts-ignore: decorator
@inline
function runOf(frame: i32): usize {
  return frameAt(displacement, frame & displacementMask);
}

// @ts-ignore: decorator
@inline
function leftsAt(run: usize): v128 {
  return v128.shuffle<i32>(v128.load(run), v128.load(run, 16), 0, 2, 4, 6);
}

// @ts-ignore: decorator
@inline
function highestOf(lanes: v128): f64 {
  const pair = largerFrame(lanes);
  return <f64>max<f32>(f32x4.extract_lane(pair, 0), f32x4.extract_lane(pair, 1));
}

/**
 * Bit n for the nth frame of a group that was taken, if it lies between two places or next to them
 * and may have a peak over `height` next to it.
 * @param rise what a peak may rise by
 */
export function framesOver(group: i32, from: f64, until: f64, height: f64, rise: f64): u32 {
  const least = f32x4.splat(<f32>(height - rise - RIPPLE * abs(height)));
  let over: u32 = 0;
  for (let n = 0; n < GROUP; n += 4) {
    over |= <u32>i32x4.bitmask(f32x4.gt(v128.load(heights + (<usize>n << 2)), least)) << n;
  }
  const first = <i32>Math.floor(from) - (group << GROUP_SHIFT);
  const last = <i32>Math.ceil(until) - (group << GROUP_SHIFT);
  if (first > 0) over &= <u32>-1 << first;
  if (last < GROUP - 1) over &= (<u32>2 << last) - 1;
  return over;
}

/** True if all frames of a group lie between two places. */
export function isWithin(group: i32, from: f64, until: f64): bool {
  return from <= <f64>(group << GROUP_SHIFT) && until >= <f64>(((group + 1) << GROUP_SHIFT) - 1);
}
