import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { HotSpot } from './forecast-types.js';
import { contactDepth, overcutDepth } from './groove.js';
import { landTaker } from './land-taker.js';
import { FIRST_JUDGED, LENGTH_MARGIN } from './limits.js';
import { valueAt } from './nodes.js';
import { nominalLand } from './nominal-land.js';
import type { Plan } from './plan.js';
import { binStart, landTolerance, type PlannedSide } from './planned-side.js';
import { windowMinimum } from './planners/window-maximum.js';
import { survives } from './survives.js';
import { trackAt } from './track-at.js';

/** How many places are told. */
const HOT_SPOTS = 5;
const BINS_PER_TURN = BINS_PER_QUARTER * QUARTERS_PER_TURN;

/**
 * The places with the least land, at least one turn apart, the worst first. Only land less than
 * that of an unmodulated groove counts, none outside the first silent turn, and none inside the
 * finishing groove, where nothing is cut.
 */
export function hotSpots(side: PlannedSide, plan: Plan): HotSpot[] {
  const tolerance = landTolerance(side.settings);
  const land = landOfBins(side, plan, tolerance);
  const unmodulated = unmodulatedLand(side).map((still) => still - tolerance - LENGTH_MARGIN);
  const places: number[] = [];
  while (places.length < HOT_SPOTS) {
    const place = leastApart(land, places, unmodulated);
    if (place === null) break;
    places.push(place);
  }
  return places.map((bin) => hotSpot(side, plan, bin, land[bin]!));
}

/** Land of each bin; NaN inside the finishing groove. */
function landOfBins(side: PlannedSide, plan: Plan, tolerance: number): Float64Array {
  const innermost = side.settings.finishingDiameter / 2;
  return side.approachLoose.map((loose, bin) => {
    if (valueAt(side, plan.radius, binStart(side, bin)) < innermost) return Number.NaN;
    const parallel = nominalLand(side, plan, bin) + plan.gain * side.approach[bin]!;
    return parallel - plan.gain * loose - tolerance;
  });
}

/**
 * Land that an unmodulated groove has at least, per planned quarter: between two turns of different
 * base pitch the tighter counts, and the wider of the two grooves at its ends.
 */
function unmodulatedLand({ basePitch, baseFacing }: PlannedSide): Float64Array {
  return basePitch.map((_, quarter) => {
    const pitch = windowMinimum(basePitch, quarter - QUARTERS_PER_TURN, quarter);
    return pitch - Math.max(baseFacing[quarter]!, baseFacing[quarter + 1]!);
  });
}

/** The bin with the least land under its quarter's `limits` that is a turn or more from `places`. */
function leastApart(
  land: Float64Array,
  places: readonly number[],
  limits: Float64Array,
): number | null {
  let least = Number.POSITIVE_INFINITY;
  let found: number | null = null;
  for (let bin = FIRST_JUDGED * BINS_PER_QUARTER; bin < land.length; bin++) {
    if (!(land[bin]! < least && land[bin]! < limits[Math.floor(bin / BINS_PER_QUARTER)]!)) continue;
    if (places.some((place) => Math.abs(place - bin) < BINS_PER_TURN)) continue;
    least = land[bin]!;
    found = bin;
  }
  return found;
}

function hotSpot(side: PlannedSide, plan: Plan, bin: number, land: number): HotSpot {
  const atSeconds = binStart(side, bin);
  const landNominal = nominalLand(side, plan, bin);
  const depth = overcutDepth(land);
  const { tracks } = side.hand;
  return {
    atSeconds,
    turn: atSeconds / side.motion.turnSeconds,
    radius: valueAt(side, plan.radius, atSeconds),
    land,
    landNominal,
    pitch: plan.pitch[Math.floor(bin / BINS_PER_QUARTER)]!,
    ...landTaker(side, plan, bin),
    overcutDepth: depth,
    reachesContact: depth > 0 && depth >= shallowestContact(side, plan, bin),
    survives: survives(side, plan, bin, null),
    ...(tracks.length === 0 ? {} : { track: trackAt(tracks, atSeconds)?.name ?? null }),
  };
}

/** Where a playback sphere touches the narrower of the two grooves that meet at a bin. */
function shallowestContact(side: PlannedSide, plan: Plan, bin: number): number {
  const contacts = [bin, bin - BINS_PER_TURN].map((place) => {
    const halfWidth = valueAt(side, plan.halfWidth, binStart(side, place));
    const width = 2 * (halfWidth - plan.gain * (side.lift[place] ?? 0));
    return contactDepth(width, side.settings.playbackTip);
  });
  return Math.min(...contacts);
}
