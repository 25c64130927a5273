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

/** Room for shares, to be filled in again and again; rows are of the program's quarters. */
export interface ShareRows extends Pick<WindowShares, 'shares' | 'own'> {
  /** Magnitude at level 0 dB that is over the limit. */
  readonly limits: Float64Array;
  /** Samples over it. */
  readonly left: Float64Array;
  readonly right: Float64Array;
}

export function emptyShareRows(side: PlannedSide): ShareRows {
  const { programCount } = side;
  return {
    shares: new Float64Array(Math.max(0, programCount - windowQuarters(side) + 1)),
    own: new Float64Array(programCount),
    limits: new Float64Array(programCount),
    left: new Float64Array(programCount),
    right: new Float64Array(programCount),
  };
}

/**
 * How much of each second a wall's edge moves at more than `limit` of the groove speed.
 * @param rows are overwritten; some become the result's
 */
export function facetShares(
  side: PlannedSide,
  plan: Plan,
  limit: number,
  rows = emptyShareRows(side),
): WindowShares {
  const { limits } = rows;
  setSpeeds(limits, side, plan);
  for (let quarter = 0; quarter < limits.length; quarter++) limits[quarter]! *= limit / plan.gain;
  return windowShares(side, side.left.edgeVelocity, side.right.edgeVelocity, rows);
}

/**
 * How much of each second a wall bends tighter than a tip of radius `tip`, V²/|ü| < tip.
 * @param rows are overwritten; some become the result's
 */
export function bendShares(
  side: PlannedSide,
  plan: Plan,
  tip: Metres,
  rows = emptyShareRows(side),
): WindowShares {
  const { limits } = rows;
  setSpeeds(limits, side, plan);
  const share = 1 / tip / plan.gain;
  for (let quarter = 0; quarter < limits.length; quarter++) {
    const speed = limits[quarter]!;
    limits[quarter] = speed * speed * share;
  }
  return windowShares(side, side.left.acceleration, side.right.acceleration, rows);
}

/** Least groove speed within each quarter of the program. */
function setSpeeds(speeds: Float64Array, side: PlannedSide, plan: Plan): void {
  for (let quarter = 0; quarter < speeds.length; quarter++) {
    speeds[quarter] = quarterSpeed(side, plan, quarter + side.lead);
  }
}

/** Largest of all windows. */
export function worstShare({ shares }: WindowShares): number {
  let worst = 0;
  for (let window = 0; window < shares.length; window++) {
    if (shares[window]! > worst) worst = shares[window]!;
  }
  return worst;
}

/** @param rows of which the limits are known */
function windowShares(
  side: PlannedSide,
  ofLeft: RankedHistogram,
  ofRight: RankedHistogram,
  rows: ShareRows,
): WindowShares {
  const { shares, own, limits } = rows;
  const quarters = windowQuarters(side);
  const left = { histogram: ofLeft, over: rows.left };
  const right = { histogram: ofRight, over: rows.right };
  shares.fill(0);
  own.fill(0);
  setOver(left, limits);
  setOver(right, limits);
  raiseShares(own, left, 1);
  raiseShares(own, right, 1);
  raiseShares(shares, left, quarters);
  raiseShares(shares, right, quarters);
  return { quarters, shares, own };
}

/** The whole quarters nearest to a second, or the program's. */
function windowQuarters({ programCount, quarterSeconds }: PlannedSide): number {
  return Math.max(1, Math.min(programCount, Math.round(1 / quarterSeconds)));
}

/** One wall's samples, and how many of each quarter are over the limit. */
interface WallOver {
  readonly histogram: RankedHistogram;
  readonly over: Float64Array;
}

function setOver({ histogram, over }: WallOver, limits: Float64Array): void {
  const { peaks } = histogram;
  over.fill(0);
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
