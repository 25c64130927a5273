import type { Metres, MetresPerSecond } from '../units.js';
import { type RankedHistogram, samplesIn, samplesOver } from './histogram-share.js';
import type { Plan } from './plan.js';
import type { WallHistograms } from './planned-rows.js';
import type { PlannedSide } from './planned-side.js';
import { quarterSpeed } from './tracing.js';

/** Shares of samples over a limit in every window of `quarters` quarters of the program. */
export interface WindowShares {
  /** Length of the windows: the whole quarters nearest to one second, or the program's. */
  readonly quarters: number;
  /** Share in the window that begins with each quarter of the program, the worse wall. */
  readonly shares: Float64Array;
  /** Share in each quarter of the program by itself, the worse wall. */
  readonly own: Float64Array;
}

/** How much of each second a wall's edge moves at more than `limit` of the groove speed. */
export function facetShares(side: PlannedSide, plan: Plan, limit: number): WindowShares {
  return windowShares(
    side,
    ({ edgeVelocity }) => edgeVelocity,
    (index) => (limit * quarterSpeed(side, plan, index)) / plan.gain,
  );
}

/** How much of each second a wall bends tighter than a tip of radius `tip`, V²/|ü| < tip. */
export function bendShares(side: PlannedSide, plan: Plan, tip: Metres): WindowShares {
  return windowShares(
    side,
    ({ acceleration }) => acceleration,
    (index) => quarterSpeed(side, plan, index) ** 2 / tip / plan.gain,
  );
}

/** Largest of all windows. */
export function worstShare({ shares }: WindowShares): number {
  return shares.reduce((worst, share) => Math.max(worst, share), 0);
}

/**
 * @param thresholdAt magnitude at level 0 dB that is over the limit, per planned quarter
 */
function windowShares(
  side: PlannedSide,
  histogramOf: (wall: WallHistograms) => RankedHistogram,
  thresholdAt: (index: number) => MetresPerSecond,
): WindowShares {
  const { programCount, lead } = side;
  const quarters = Math.max(1, Math.min(programCount, Math.round(1 / side.quarterSeconds)));
  const windows = Math.max(0, programCount - quarters + 1);
  const shares = new Float64Array(windows);
  const own = new Float64Array(programCount);
  const over = new Float64Array(programCount);
  for (const wall of [side.left, side.right]) {
    const histogram = histogramOf(wall);
    for (let quarter = 0; quarter < programCount; quarter++) {
      over[quarter] = samplesOver(histogram, quarter, thresholdAt(quarter + lead));
      own[quarter] = Math.max(own[quarter]!, shareOf(histogram, over, quarter, 1));
    }
    for (let window = 0; window < windows; window++) {
      const share = shareOf(histogram, over, window, quarters);
      shares[window] = Math.max(shares[window]!, share);
    }
  }
  return { quarters, shares, own };
}

function shareOf(
  histogram: RankedHistogram,
  over: Float64Array,
  window: number,
  quarters: number,
): number {
  let samples = 0;
  let beyond = 0;
  for (let quarter = window; quarter < window + quarters; quarter++) {
    samples += samplesIn(histogram, quarter);
    beyond += over[quarter]!;
  }
  return samples > 0 ? beyond / samples : 0;
}
