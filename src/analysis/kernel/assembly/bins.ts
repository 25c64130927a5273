import { closingMaximum } from './closing';
import { boundFacing, GROUP, GROUP_SHIFT } from './groups';
import { MARGIN } from './interpolate';
import { looseMaximum } from './loose';
import { delayTaps, edge, motionEnd, slackFrames, turnFrames } from './rings';
import { seek, wallAt } from './seek';

/** Most bins between two visits of the host. */
export const BIN_CAPACITY: i32 = 1024;
/** approach, approachLoose, lift, sink, lateral, outward, inward of each. */
export const COLUMNS: i32 = 7;
export const binMaxima: usize = memory.data(BIN_CAPACITY * COLUMNS * 8, 16);
export let binCount: i32 = 0;

let bin: i32 = 0;
/** The walls where the bin in hand begins, which is where the last one ended. */
let leftStart: f64 = 0;
let rightStart: f64 = 0;

const HALF_ROOT: f64 = Math.SQRT1_2;
const ROOT: f64 = Math.SQRT2;

export function takeBins(): void {
  binCount = 0;
}

/** Measures the bins whose motion is complete. */
export function measureBins(): void {
  while (edge(bin + 1) + slackFrames + <f64>(3 * GROUP + MARGIN) < <f64>motionEnd) {
    measureBin(edge(bin), edge(bin + 1));
    bin++;
  }
}

function measureBin(from: f64, until: f64): void {
  if (bin == 0) {
    leftStart = wallAt(from, 1, 0);
    rightStart = wallAt(from, 0, 1);
  }
  const out = binMaxima + <usize>(binCount * COLUMNS * 8);
  boundFacing(
    <i32>Math.floor(from) >> GROUP_SHIFT,
    <i32>Math.ceil(until) >> GROUP_SHIFT,
    <i32>Math.floor(from - turnFrames - slackFrames) - GROUP - MARGIN,
    <i32>Math.ceil(until - turnFrames + slackFrames) + GROUP + MARGIN);
  const approach = closingMaximum(from, until, turnFrames, delayTaps, -Infinity);
  store<f64>(out, approach);
  store<f64>(out, slackFrames == 0 ? approach : looseMaximum(from, until, approach), 8);
  const leftEnd = wallAt(until, 1, 0);
  const rightEnd = wallAt(until, 0, 1);
  const lift = HALF_ROOT * max<f64>(leftStart - rightStart, leftEnd - rightEnd);
  const sink = HALF_ROOT * max<f64>(rightStart - leftStart, rightEnd - leftEnd);
  const lateral = HALF_ROOT * max<f64>(abs(leftStart + rightStart), abs(leftEnd + rightEnd));
  store<f64>(out, seek(from, until, HALF_ROOT, -HALF_ROOT, lift), 16);
  store<f64>(out, seek(from, until, -HALF_ROOT, HALF_ROOT, sink), 24);
  const outwards = seek(from, until, HALF_ROOT, HALF_ROOT, lateral);
  store<f64>(out, seek(from, until, -HALF_ROOT, -HALF_ROOT, outwards), 32);
  store<f64>(out, seekDilated(from, until, 0, ROOT), 40);
  store<f64>(out, seekDilated(from, until, -ROOT, 0), 48);
  leftStart = leftEnd;
  rightStart = rightEnd;
  binCount++;
}

/** Maximum over a bin and what the speed may be off on both sides. */
function seekDilated(from: f64, until: f64, wl: f64, wr: f64): f64 {
  const start = from - slackFrames;
  const end = until + slackFrames;
  return seek(start, end, wl, wr, max<f64>(wallAt(start, wl, wr), wallAt(end, wl, wr)));
}
