import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../analysis/motion.js';
import { FIRST_JUDGED, LENGTH_MARGIN } from './limits.js';
import { valueAt } from './nodes.js';
import { nominalLand } from './nominal-land.js';
import type { Plan } from './plan.js';
import { binStart, landTolerance, type PlannedSide } from './planned-side.js';
import { windowMinimum } from './planners/window-maximum.js';

/** A bin of the planned quarters, and its land, m. */
export interface LandPlace {
  readonly bin: number;
  readonly land: number;
}

const BINS_PER_TURN = BINS_PER_QUARTER * QUARTERS_PER_TURN;
/** Far more than rounding takes from a length, far less than matters, m. */
const ROUNDING = 1e-12;

/**
 * The bins with the least land, at least one turn apart, the least first. Only land less than that
 * of an unmodulated groove counts, none outside the first silent turn, and none inside the finishing
 * groove, where nothing is cut.
 * @param most how many at most
 */
export function leastLand(side: PlannedSide, plan: Plan, most: number): LandPlace[] {
  const bounds = landBounds(side, plan);
  const limits = unmodulatedLand(side);
  const places: LandPlace[] = [];
  while (places.length < most) {
    const place = leastApart(side, plan, places, bounds, limits);
    if (place === null) break;
    places.push(place);
  }
  return places;
}

/** What the land of a planned quarter's bins is at least, wherever in it the most is taken. */
function landBounds(side: PlannedSide, { advance, facing, gain }: Plan): Float64Array {
  const tolerance = landTolerance(side.settings) + ROUNDING;
  const bounds = new Float64Array(side.count);
  for (let quarter = 0; quarter < side.count; quarter++) {
    let free = advance[quarter]! - facing[quarter]!;
    const ends = advance[quarter + 1]! - facing[quarter + 1]!;
    if (ends < free) free = ends;
    bounds[quarter] = free - gain * side.approachLooseMax[quarter]! - tolerance;
  }
  return bounds;
}

/**
 * What an unmodulated groove leaves at least, per planned quarter: between two turns of different
 * base pitch the tighter counts, and the wider of the two grooves at its ends.
 */
function unmodulatedLand({ settings, basePitch, baseFacing }: PlannedSide): Float64Array {
  const margin = landTolerance(settings) + LENGTH_MARGIN;
  return basePitch.map((_, quarter) => {
    const pitch = windowMinimum(basePitch, quarter - QUARTERS_PER_TURN, quarter);
    return pitch - Math.max(baseFacing[quarter]!, baseFacing[quarter + 1]!) - margin;
  });
}

/** The bin with the least land under its quarter's `limits` that is a turn or more from `places`. */
function leastApart(
  side: PlannedSide,
  plan: Plan,
  places: readonly LandPlace[],
  bounds: Float64Array,
  limits: Float64Array,
): LandPlace | null {
  let least: LandPlace | null = null;
  for (let quarter = FIRST_JUDGED; quarter < side.count; quarter++) {
    const under: number =
      least === null ? limits[quarter]! : Math.min(least.land, limits[quarter]!);
    if (bounds[quarter]! >= under) continue;
    least = leastWithin(side, plan, places, quarter, under) ?? least;
  }
  return least;
}

/** The first of the bins of a quarter with the least land under a limit, likewise. */
function leastWithin(
  side: PlannedSide,
  plan: Plan,
  places: readonly LandPlace[],
  quarter: number,
  limit: number,
): LandPlace | null {
  let [found, least] = [-1, limit];
  const first = quarter * BINS_PER_QUARTER;
  for (let bin = first; bin < first + BINS_PER_QUARTER; bin++) {
    const land = landOfBin(side, plan, bin);
    if (!(land < least) || isInsideFinishing(side, plan, bin)) continue;
    if (places.some((place) => Math.abs(place.bin - bin) < BINS_PER_TURN)) continue;
    [found, least] = [bin, land];
  }
  return found < 0 ? null : { bin: found, land: least };
}

function landOfBin(side: PlannedSide, plan: Plan, bin: number): number {
  const { approach, approachLoose, settings } = side;
  const parallel = nominalLand(side, plan, bin) + plan.gain * approach[bin]!;
  return parallel - plan.gain * approachLoose[bin]! - landTolerance(settings);
}

function isInsideFinishing(side: PlannedSide, { radius }: Plan, bin: number): boolean {
  return valueAt(side, radius, binStart(side, bin)) < side.settings.finishingDiameter / 2;
}
