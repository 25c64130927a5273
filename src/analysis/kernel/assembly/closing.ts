import { GROUP, GROUP_SHIFT, innerBound, outerBound } from './groups';
import { lookAtRow, MARGIN, valueAt } from './interpolate';
import { delayTaps, displacement, displacementMask, turnFrames } from './rings';
import { climbGroup } from './seek';
import { frameAt } from './vector';

/** The closing of the two walls over a group and the margin around it. */
const row: usize = memory.data((GROUP + 2 * MARGIN + 2) * 8, 16);

/** Largest √2·(u_R(t) − u_L(t − T)) between two places. */
export function closingMaximum(from: f64, until: f64): f64 {
  const first = <i32>Math.ceil(from);
  const end = <i32>Math.ceil(until);
  let largest = max<f64>(closingAt(from), closingAt(until));
  const lastGroup = (end - 1) >> GROUP_SHIFT;
  let likeliest = -1;
  let most = largest;
  for (let group = first >> GROUP_SHIFT; group <= lastGroup; group++) {
    const bound = closingBound(group);
    if (bound > most) {
      most = bound;
      likeliest = group;
    }
  }
  if (likeliest < 0) return largest;
  largest = climbClosing(likeliest, first, end, largest);
  for (let group = first >> GROUP_SHIFT; group <= lastGroup; group++) {
    if (closingBound(group) > largest) largest = climbClosing(group, first, end, largest);
  }
  return largest;
}

function closingBound(group: i32): f64 {
  const first = (group << GROUP_SHIFT) - <i32>Math.ceil(turnFrames);
  return Math.SQRT2 * (outerBound(group) + innerBound(first - 1, first + GROUP + 1));
}

function climbClosing(group: i32, first: i32, end: i32, best: f64): f64 {
  lookAtClosing(group << GROUP_SHIFT, GROUP);
  return climbGroup(group, first, end, best);
}

function closingAt(place: f64): f64 {
  lookAtClosing(<i32>Math.floor(place), 1);
  return valueAt(place);
}

/** Makes the row for some frames and their margin, and looks at it. */
function lookAtClosing(first: i32, count: i32): void {
  const whole = <i32>Math.ceil(turnFrames);
  const isWhole = <f64>whole == turnFrames;
  const numbers = row - (<usize>(first - MARGIN) << 3);
  for (let n = first - MARGIN; n < first + count + MARGIN; n++) {
    const outer = load<f64>(frameAt(displacement, n & displacementMask), 8);
    const inner = isWhole
      ? load<f64>(frameAt(displacement, (n - whole) & displacementMask))
      : delayedLeft(n - whole);
    store<f64>(numbers + (<usize>n << 3), Math.SQRT2 * (outer - inner));
  }
  lookAtRow(numbers);
}

/** u_L where a turn is no whole number of frames. */
function delayedLeft(frame: i32): f64 {
  let value: f64 = 0;
  for (let tap = 0; tap < 12; tap++) {
    const at = frameAt(displacement, (frame + tap - 5) & displacementMask);
    value += load<f64>(delayTaps + (<usize>tap << 3)) * load<f64>(at);
  }
  return value;
}
