import {
  boundClosing, boundOf, bounds, firstFacing, lastFacing, likeliestGroup, nextOver,
} from './bounds';
import { GROUP, GROUP_SHIFT, leftRise, rightRise } from './groups';
import { framesOver, isWithin, takeClosing } from './heights';
import { lookAt, MARGIN, valueAt } from './interpolate';
import { displacement, displacementMask } from './rings';
import { climbFrames, firstGroup, lastGroup, spanOf } from './seek';
import { frameAt } from './vector';

/** Taps of the interpolator that a delay with a fraction takes. */
const DELAY_TAPS: i32 = 12;

/** u_L over the frames that the closing over a group, its margin and the taps take. */
const inner: usize = memory.data((GROUP + 2 * MARGIN + DELAY_TAPS + 4) * 8, 16);

/** The delay, frames; rounded up; and the taps for what that is too many, 0 where it is whole. */
let exact: f64 = 0;
let whole: i32 = 0;
let fractionTaps: usize = 0;

/**
 * Largest √2·(u_R(t) − u_L(t − delay)) between two places, or `floor` where that is higher.
 * @param taps interpolator for the fraction that `delay` falls short of a whole number of frames
 */
export function closingMaximum(from: f64, until: f64, delay: f64, taps: usize, floor: f64): f64 {
  exact = delay;
  whole = <i32>Math.ceil(delay);
  fractionTaps = <f64>whole == delay ? 0 : taps;
  const first = firstGroup(from);
  const count = lastGroup(until) - first + 1;
  boundClosing(first, first + count - 1, delay);
  const likeliest = likeliestGroup(bounds, count, floor * Math.SQRT1_2);
  if (likeliest < 0) return floor;
  let largest = climbClosing(first + likeliest, from, until, floor);
  for (let n = nextOver(bounds, count, 0, largest * Math.SQRT1_2); n < count; ) {
    if (n != likeliest) largest = climbClosing(first + n, from, until, largest);
    n = nextOver(bounds, count, n + 1, largest * Math.SQRT1_2);
  }
  const height = largest * Math.SQRT1_2;
  if (boundOf(bounds, 0) > height) largest = max<f64>(largest, closingAt(from));
  if (boundOf(bounds, count - 1) > height) largest = max<f64>(largest, closingAt(until));
  return largest;
}

function climbClosing(group: i32, from: f64, until: f64, best: f64): f64 {
  const isWhole = fractionTaps == 0;
  const highest = takeClosing(group, isWhole ? whole : whole - 1, isWhole ? 0 : 1);
  let height = best * Math.SQRT1_2;
  if (isWhole && isWithin(group, from, until)) height = max<f64>(height, highest);
  const frames = framesOver(group, from, until, height, closingRise(group));
  if (frames == 0) return best;
  lookAtClosing((group << GROUP_SHIFT) + ctz(frames), spanOf(frames));
  return climbFrames(group, frames, from, until, best);
}

/**
 * What the closing may rise by above what is taken of a group's frames. Between two frames u_L may
 * fall as far below both as a peak rises, and its curvature be twice as large as at any.
 */
function closingRise(group: i32): f64 {
  const inner = max<f32>(
    leftRise(firstFacing(group, exact)), leftRise(lastFacing(group, exact)));
  return <f64>(rightRise(group) + (fractionTaps == 0 ? inner : 3 * inner));
}

function closingAt(place: f64): f64 {
  lookAtClosing(<i32>Math.floor(place), 2);
  return valueAt(place);
}

/** Looks at the closing of some frames. */
function lookAtClosing(first: i32, count: i32): void {
  const out = lookAt(first);
  const start = first - MARGIN;
  const end = count + 2 * MARGIN;
  takeInner(start - whole - 5, end + DELAY_TAPS);
  const outers = frameAt(displacement, start & displacementMask);
  const root = f64x2.splat(Math.SQRT2);
  for (let n = 0; n < end; n += 2) {
    const inners = inner + (<usize>n << 3);
    const before = fractionTaps == 0 ? v128.load(inners, 40) : delayedInner(inners);
    const pair = v128.load(frameAt(outers, n));
    const outer = f64x2.promote_low_f32x4(v128.shuffle<i32>(pair, pair, 1, 3, 1, 3));
    v128.store(out + (<usize>n << 3), f64x2.mul(root, f64x2.sub(outer, before)));
  }
}

/** Takes u_L of a run into a row of its own. */
function takeInner(first: i32, count: i32): void {
  const run = frameAt(displacement, first & displacementMask);
  for (let n = 0; n < count; n += 2) {
    const pair = v128.load(frameAt(run, n));
    const lefts = v128.shuffle<i32>(pair, pair, 0, 2, 0, 2);
    v128.store(inner + (<usize>n << 3), f64x2.promote_low_f32x4(lefts));
  }
}

/** u_L at two frames where the delay is no whole number of frames. */
function delayedInner(inners: usize): v128 {
  let even = f64x2.splat(0);
  let odd = even;
  for (let tap: usize = 0; tap < <usize>DELAY_TAPS << 3; tap += 16) {
    const at = inners + tap;
    even = f64x2.add(even, f64x2.mul(v128.load64_splat(fractionTaps + tap), v128.load(at)));
    odd = f64x2.add(odd, f64x2.mul(v128.load64_splat(fractionTaps + tap, 8), v128.load(at, 8)));
  }
  return f64x2.add(even, odd);
}
