import { GROUP, GROUP_SHIFT, innerBound, MOST_IN_BIN, outerBound } from './groups';
import { lookAtRow, MARGIN, valueAt } from './interpolate';
import { displacement, displacementMask } from './rings';
import { climbGroup } from './seek';
import { frameAt } from './vector';

/** Taps of the interpolator that a delay with a fraction takes. */
const DELAY_TAPS: i32 = 12;

/** The closing of the two walls over a group and the margin around it. */
const row: usize = memory.data((GROUP + 2 * MARGIN + 4) * 8, 16);

/** Bounds of the groups of the bin in hand. */
const bounds: usize = memory.data(MOST_IN_BIN * 8, 16);

/** Frames of the delay, rounded up, and the taps for what that is too many; 0 where it is whole. */
let whole: i32 = 0;
let fractionTaps: usize = 0;

/**
 * Largest √2·(u_R(t) − u_L(t − delay)) between two places, or `floor` where that is higher.
 * @param taps interpolator for the fraction that `delay` falls short of a whole number of frames
 */
export function closingMaximum(from: f64, until: f64, delay: f64, taps: usize, floor: f64): f64 {
  whole = <i32>Math.ceil(delay);
  fractionTaps = <f64>whole == delay ? 0 : taps;
  const firstGroup = <i32>Math.floor(from) >> GROUP_SHIFT;
  const lastGroup = <i32>Math.ceil(until) >> GROUP_SHIFT;
  let largest = max<f64>(floor, max<f64>(closingAt(from), closingAt(until)));
  let likeliest = -1;
  let most = largest;
  for (let group = firstGroup; group <= lastGroup; group++) {
    const bound = closingBound(group);
    store<f64>(bounds + (<usize>(group - firstGroup) << 3), bound);
    if (bound > most) {
      most = bound;
      likeliest = group;
    }
  }
  if (likeliest < 0) return largest;
  largest = climbClosing(likeliest, from, until, largest);
  for (let group = firstGroup; group <= lastGroup; group++) {
    const bound = load<f64>(bounds + (<usize>(group - firstGroup) << 3));
    if (bound > largest) largest = climbClosing(group, from, until, largest);
  }
  return largest;
}

function closingBound(group: i32): f64 {
  const first = (group << GROUP_SHIFT) - whole;
  return Math.SQRT2 * (outerBound(group) + innerBound(first - 1, first + GROUP + 1));
}

function climbClosing(group: i32, from: f64, until: f64, best: f64): f64 {
  lookAtClosing(group << GROUP_SHIFT, GROUP);
  return climbGroup(group, from, until, best);
}

function closingAt(place: f64): f64 {
  lookAtClosing(<i32>Math.floor(place), 1);
  return valueAt(place);
}

/** Makes the row for some frames and their margin, and looks at it. */
function lookAtClosing(first: i32, count: i32): void {
  const start = first - MARGIN;
  const outers = frameAt(displacement, start & displacementMask);
  const inners = frameAt(displacement, (start - whole) & displacementMask);
  for (let n = 0; n < count + 2 * MARGIN; n++) {
    const outer = load<f64>(frameAt(outers, n), 8);
    const inner = fractionTaps == 0 ? load<f64>(frameAt(inners, n)) : delayedLeft(start + n - whole);
    store<f64>(row + (<usize>n << 3), Math.SQRT2 * (outer - inner));
  }
  lookAtRow(row - (<usize>start << 3));
}

/** u_L where the delay is no whole number of frames. */
function delayedLeft(frame: i32): f64 {
  const run = frameAt(displacement, (frame - 5) & displacementMask);
  let even: f64 = 0;
  let odd: f64 = 0;
  for (let tap = 0; tap < DELAY_TAPS; tap += 2) {
    const taps = fractionTaps + (<usize>tap << 3);
    const frames = frameAt(run, tap);
    even += load<f64>(taps) * load<f64>(frames);
    odd += load<f64>(taps, 8) * load<f64>(frames, 16);
  }
  return even + odd;
}
