import { closingMaximum } from './closing';
import { boundOuter, GROUP, GROUP_SHIFT } from './groups';
import { MARGIN } from './interpolate';
import { looseMaximum } from './loose';
import {
  binFrames, delayTaps, firstBin, leadFrames, motionEnd, slackFrames, turnFrames,
} from './rings';
import { seek } from './seek';
import { measureWalls } from './walls';

/** Most bins between two visits of the host. */
const BIN_CAPACITY: i32 = 512;
/** approach, approachLoose, lift, sink, lateral, outward, inward of each. */
const COLUMNS: i32 = 7;
export const binMaxima: usize = memory.data(BIN_CAPACITY * COLUMNS * 8, 16);
export let binCount: i32 = 0;

let bin: i32 = 0;

const HALF_ROOT: f64 = Math.SQRT1_2;
const ROOT: f64 = Math.SQRT2;

export function takeBins(): void {
  binCount = 0;
}

/** Where a measured bin begins, frames from the start of the lead. */
// @ts-ignore: decorator
@inline
function edge(index: i32): f64 {
  return <f64>leadFrames + <f64>(firstBin + index) * binFrames;
}

/** Measures the bins whose motion is complete. */
export function measureBins(): void {
  while (edge(bin + 1) + slackFrames + <f64>(3 * GROUP + MARGIN) < <f64>motionEnd) {
    measureBin(edge(bin), edge(bin + 1));
    bin++;
  }
}

function measureBin(from: f64, until: f64): void {
  const out = binMaxima + <usize>(binCount * COLUMNS * 8);
  boundOuter(<i32>Math.floor(from) >> GROUP_SHIFT, <i32>Math.ceil(until) >> GROUP_SHIFT);
  const approach = closingMaximum(from, until, turnFrames, delayTaps, -Infinity);
  store<f64>(out, approach);
  store<f64>(out, slackFrames == 0 ? approach : looseMaximum(from, until, approach), 8);
  store<f64>(out, seek(from, until, HALF_ROOT, -HALF_ROOT, -Infinity), 16);
  store<f64>(out, seek(from, until, -HALF_ROOT, HALF_ROOT, -Infinity), 24);
  const outwards = seek(from, until, HALF_ROOT, HALF_ROOT, -Infinity);
  store<f64>(out, seek(from, until, -HALF_ROOT, -HALF_ROOT, outwards), 32);
  store<f64>(out, seek(from - slackFrames, until + slackFrames, 0, ROOT, -Infinity), 40);
  store<f64>(out, seek(from - slackFrames, until + slackFrames, -ROOT, 0, -Infinity), 48);
  measureWalls(from, until, bin);
  binCount++;
}
