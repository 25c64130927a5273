import type { MotionSummary } from '../../src/analysis/motion.js';
import { emptyMotion } from './empty-motion.js';

/** Bins of a turn of 1.8 s. */
const BIN = 1.8 / 64;

/** Seconds of a program in which the outer wall swings by so much, m. */
export interface Passage {
  readonly from: number;
  readonly until: number;
  readonly outward: number;
}

/** A program whose outer wall swings by `outward` throughout, and by more in some passages. */
export function swayingMotion(
  seconds: number,
  outward: number,
  passages: readonly Passage[] = [],
): MotionSummary {
  const motion = emptyMotion(seconds);
  const bins = Math.round(seconds / BIN);
  for (let bin = 0; bin < bins; bin++) {
    const at = (bin + 0.5) * BIN;
    const passage = passages.find(({ from, until }) => at >= from && at < until);
    const swing = passage?.outward ?? outward;
    for (const row of [motion.approach, motion.approachLoose, motion.outward]) row[bin] = swing;
  }
  return motion;
}
