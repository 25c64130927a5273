import { boundFacing } from './bounds';
import { closingMaximum } from './closing';
import { GROUP } from './groups';
import { MARGIN } from './interpolate';
import { looseMaximum } from './loose';
import { delayTaps, edge, motionEnd, slackFrames, turnFrames } from './rings';
import { firstGroup, lastGroup, seekLeftDown, seekRight } from './seek';
import { lateralFound, liftFound, seekSums, sinkFound } from './sums';

/** Most bins between two visits of the host. */
export const BIN_CAPACITY: i32 = 1024;
/** approach, approachLoose, lift, sink, lateral, outward, inward of each. */
export const COLUMNS: i32 = 7;
export const binMaxima: usize = memory.data(BIN_CAPACITY * COLUMNS * 8, 16);
export let binCount: i32 = 0;

let bin: i32 = 0;
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
  const out = binMaxima + <usize>(binCount * COLUMNS * 8);
  boundFacing(
    firstGroup(from),
    lastGroup(until),
    <i32>Math.floor(from - turnFrames - slackFrames) - GROUP - MARGIN,
    <i32>Math.ceil(until - turnFrames + slackFrames) + GROUP + MARGIN);
  const approach = closingMaximum(from, until, turnFrames, delayTaps, -Infinity);
  store<f64>(out, approach);
  store<f64>(out, slackFrames == 0 ? approach : looseMaximum(from, until, approach), 8);
  seekSums(from, until);
  store<f64>(out, liftFound(), 16);
  store<f64>(out, sinkFound(), 24);
  store<f64>(out, lateralFound(), 32);
  // The speed may be off on both sides.
  const start = from - slackFrames;
  const end = until + slackFrames;
  store<f64>(out, seekRight(start, end, Math.SQRT2, -Infinity), 40);
  store<f64>(out, seekLeftDown(start, end, Math.SQRT2, -Infinity), 48);
  binCount++;
}
