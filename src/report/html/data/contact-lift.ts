import {
  BINS_PER_QUARTER,
  type MotionSummary,
  QUARTERS_PER_TURN,
} from '../../../analysis/motion.js';
import { type BinMask, binsOf, eitherMask, laterMask, withoutMask } from './deciding-bins.js';
import { largestOf } from './filled-row.js';

/** Steps from the least to the largest of a quarter. */
const STEPS = 255;

type Vertical = Pick<MotionSummary, 'lift' | 'sink'>;

/**
 * Where a lift is asked for beside those that decide over width: at what may be a hot spot and a
 * turn outside of it, to say whether two turns meet as deep as a tip rides.
 */
export function contactMask(loose: BinMask, lift: BinMask): BinMask {
  return withoutMask(eitherMask(loose, laterMask(loose, QUARTERS_PER_TURN)), lift);
}

/** The lift in the bins of a mask, in 255 steps over what its quarter reaches, down. */
export function coarseLift(motion: Vertical, mask: BinMask): Int32Array {
  const codes = new Int32Array(motion.lift.length);
  const reach = reachOf(motion);
  for (const bin of binsOf(mask)) {
    const { from, to } = reach(bin);
    const share = to > from ? ((motion.lift[bin] ?? 0) - from) / (to - from) : 0;
    codes[bin] = Math.floor(STEPS * Math.min(1, Math.max(0, share)));
  }
  return codes;
}

/** Writes what `coarseLift` kept into the lift of a motion whose quarters reach as far. */
export function setCoarseLift(motion: Vertical, mask: BinMask, codes: Int32Array): void {
  const reach = reachOf(motion);
  for (const bin of binsOf(mask)) {
    const { from, to } = reach(bin);
    const code = codes[bin] ?? 0;
    motion.lift[bin] = code === STEPS || to <= from ? to : from + ((to - from) * code) / STEPS;
  }
}

/** From the deepest sink to the highest lift of a bin's quarter. */
function reachOf({ lift, sink }: Vertical): (bin: number) => { from: number; to: number } {
  const [highest, deepest] = [largestOf(lift), largestOf(sink)];
  return (bin) => {
    const quarter = Math.floor(bin / BINS_PER_QUARTER);
    return { from: -(deepest[quarter] ?? 0), to: highest[quarter] ?? 0 };
  };
}
