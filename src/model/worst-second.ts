import type { Metres } from '../units.js';
import { type RankedHistogram, samplesIn, samplesOver } from './histogram-share.js';
import type { Plan } from './plan.js';
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
  const limits = quarterSpeeds(side, plan);
  for (let quarter = 0; quarter < limits.length; quarter++) limits[quarter]! *= limit / plan.gain;
  return windowShares(side, side.left.edgeVelocity, side.right.edgeVelocity, limits);
}

/** How much of each second a wall bends tighter than a tip of radius `tip`, V²/|ü| < tip. */
export function bendShares(side: PlannedSide, plan: Plan, tip: Metres): WindowShares {
  const limits = quarterSpeeds(side, plan);
  const share = 1 / tip / plan.gain;
  for (let quarter = 0; quarter < limits.length; quarter++) {
    const speed = limits[quarter]!;
    limits[quarter] = speed * speed * share;
  }
  return windowShares(side, side.left.acceleration, side.right.acceleration, limits);
}

/** Least groove speed within each quarter of the program. */
function quarterSpeeds(side: PlannedSide, plan: Plan): Float64Array {
  const speeds = new Float64Array(side.programCount);
  for (let quarter = 0; quarter < speeds.length; quarter++) {
    speeds[quarter] = quarterSpeed(side, plan, quarter + side.lead);
  }
  return speeds;
}

/** Largest of all windows. */
export function worstShare({ shares }: WindowShares): number {
  let worst = 0;
  for (let window = 0; window < shares.length; window++) {
    if (shares[window]! > worst) worst = shares[window]!;
  }
  return worst;
}

/**
 * @param limits magnitude at level 0 dB that is over the limit, per quarter of the program
 */
function windowShares(
  side: PlannedSide,
  ofLeft: RankedHistogram,
  ofRight: RankedHistogram,
  limits: Float64Array,
): WindowShares {
  const { programCount } = side;
  const quarters = Math.max(1, Math.min(programCount, Math.round(1 / side.quarterSeconds)));
  const shares = new Float64Array(Math.max(0, programCount - quarters + 1));
  const own = new Float64Array(programCount);
  const left = { histogram: ofLeft, over: new Float64Array(programCount) };
  const right = { histogram: ofRight, over: new Float64Array(programCount) };
  setOver(left, limits);
  setOver(right, limits);
  raiseShares(own, left, 1);
  raiseShares(own, right, 1);
  raiseShares(shares, left, quarters);
  raiseShares(shares, right, quarters);
  return { quarters, shares, own };
}

/** One wall's samples, and how many of each quarter are over the limit. */
interface WallOver {
  readonly histogram: RankedHistogram;
  readonly over: Float64Array;
}

function setOver({ histogram, over }: WallOver, limits: Float64Array): void {
  const { peaks } = histogram;
  for (let quarter = 0; quarter < over.length; quarter++) {
    // Most quarters of most sides have nothing over it.
    if (peaks[quarter]! <= limits[quarter]!) continue;
    over[quarter] = samplesOver(histogram, quarter, limits[quarter]!);
  }
}

/** Raises shares to those of a wall, window by window; most windows have nothing over the limit. */
function raiseShares(shares: Float64Array, wall: WallOver, quarters: number): void {
  const { over } = wall;
  // Windows yet to come, this one among them, that a quarter over the limit lies in.
  let loud = 0;
  for (let last = 0; last < over.length; last++) {
    loud = over[last]! > 0 ? quarters : loud - 1;
    const window = last - quarters + 1;
    if (loud <= 0 || window < 0) continue;
    const share = shareOf(wall, window, quarters);
    if (share > shares[window]!) shares[window] = share;
  }
}

function shareOf({ histogram, over }: WallOver, window: number, quarters: number): number {
  let samples = 0;
  let beyond = 0;
  for (let quarter = window; quarter < window + quarters; quarter++) {
    samples += samplesIn(histogram, quarter);
    beyond += over[quarter]!;
  }
  return samples > 0 ? beyond / samples : 0;
}
