import { BINS_PER_QUARTER } from '../analysis/motion.js';
import { LENGTH_MARGIN } from './limits.js';
import type { Plan } from './plan.js';
import { landTolerance, type PlannedSide } from './planned-side.js';

/**
 * What a plan leaves, per planned quarter, SI, signed; places are bins of the planned quarters.
 * `landBin` is within LENGTH_MARGIN of the least: a later bin has to be less by more than that.
 */
export interface Verified {
  readonly plan: Plan;
  readonly land: Float64Array;
  readonly landBin: Int32Array;
  readonly landNominal: Float64Array;
  readonly widthMin: Float64Array;
  readonly widthMinBin: Int32Array;
  readonly widthMax: Float64Array;
}

/** The rows of what a plan leaves. */
export type VerifiedRows = Omit<Verified, 'plan'>;

/** Before any quarter is verified. */
export function emptyVerifiedRows({ count }: PlannedSide): VerifiedRows {
  return {
    land: new Float64Array(count),
    landBin: new Int32Array(count),
    landNominal: new Float64Array(count),
    widthMin: new Float64Array(count),
    widthMinBin: new Int32Array(count),
    widthMax: new Float64Array(count),
  };
}

/**
 * Land and width of a plan, bin by bin.
 * land = A − h(t − T) − h(t) − g·approachLoose − 2·depthTolerance − pitchTolerance, landNominal
 * the same with `approach` and without the tolerances; A − h − h is linear inside a bin, the
 * lesser of its two ends counts: a lower bound. Width = 2(h − z), z between −sink and lift.
 * @param rows become the result's; those of a plan that is wanted no longer will do
 */
export function verify(side: PlannedSide, plan: Plan, rows = emptyVerifiedRows(side)): Verified {
  const tolerance = landTolerance(side.settings);
  const verified = withPlan(plan, rows);
  for (let quarter = 0; quarter < side.count; quarter++) {
    landOfQuarter(side, verified, quarter, tolerance);
    widthOfQuarter(side, verified, quarter);
  }
  return verified;
}

/** A plan with rows for what it leaves, before any quarter is verified into them. */
export function withPlan(plan: Plan, rows: VerifiedRows): Verified {
  const { land, landBin, landNominal, widthMin, widthMinBin, widthMax } = rows;
  return { plan, land, landBin, landNominal, widthMin, widthMinBin, widthMax };
}

/** Verifies one quarter's land; see `verify`. */
export function landOfQuarter(
  { approach, approachLoose }: PlannedSide,
  { plan, land, landBin, landNominal }: Verified,
  quarter: number,
  tolerance: number,
): void {
  const { advance, facing, gain } = plan;
  const free = advance[quarter]! - facing[quarter]!;
  const step = (advance[quarter + 1]! - facing[quarter + 1]! - free) / BINS_PER_QUARTER;
  let between = free + Math.min(0, step);
  let least = Number.POSITIVE_INFINITY;
  let told = Number.POSITIVE_INFINITY;
  let leastNominal = Number.POSITIVE_INFINITY;
  const from = quarter * BINS_PER_QUARTER;
  for (let bin = from; bin < from + BINS_PER_QUARTER; bin++) {
    const loose = between - gain * approachLoose[bin]!;
    if (loose < told - LENGTH_MARGIN) {
      told = loose;
      landBin[quarter] = bin;
    }
    if (loose < least) least = loose;
    const nominal = between - gain * approach[bin]!;
    if (nominal < leastNominal) leastNominal = nominal;
    between += step;
  }
  land[quarter] = least - tolerance;
  landNominal[quarter] = leastNominal;
}

/** Verifies one quarter's width. */
export function widthOfQuarter(
  { lift, sink }: PlannedSide,
  { plan, widthMin, widthMinBin, widthMax }: Verified,
  quarter: number,
): void {
  const { halfWidth, gain } = plan;
  const step = (halfWidth[quarter + 1]! - halfWidth[quarter]!) / BINS_PER_QUARTER;
  let narrow = halfWidth[quarter]! + Math.min(0, step);
  const wider = Math.abs(step);
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  const from = quarter * BINS_PER_QUARTER;
  for (let bin = from; bin < from + BINS_PER_QUARTER; bin++) {
    const width = narrow - gain * lift[bin]!;
    if (width < least) {
      least = width;
      widthMinBin[quarter] = bin;
    }
    const wide = narrow + wider + gain * sink[bin]!;
    if (wide > most) most = wide;
    narrow += step;
  }
  widthMin[quarter] = 2 * least;
  widthMax[quarter] = 2 * most;
}
