import { QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Metres, MetresPerTurn, Seconds } from '../units.js';
import { quartersIn } from './nodes.js';
import type { Plan } from './plan.js';
import type { PlannedSide } from './planned-side.js';

/**
 * Mean pitch of each planned quarter as it is cut: inside a marker band its pitch overrides the
 * planned one, whatever the slews. A band opens the pitch; one that is tighter than the plan does
 * not close it. Without bands it is `pitch` itself.
 * The advance that land is made of is not told of bands: made by hand, a band comes 0.3 s early or
 * late, and where it does not lie the lathe cuts what is planned.
 * @param pitch as planned, m per turn
 */
export function withBands(side: PlannedSide, pitch: Float64Array): Float64Array {
  if (side.hand.bands.length === 0) return pitch;
  return pitch.map((_, quarter) => cutWithin(side, pitch, quarter, 1));
}

/**
 * The pitch that is cut, summed from the start of a quarter up to a share of it: a quarter of this is
 * the radius that it takes. Planned pitch times share, and more where a marker band lies in it.
 * @param share 0 to 1
 */
export function cutWithin(
  side: PlannedSide,
  pitch: Float64Array,
  quarter: number,
  share: number,
): MetresPerTurn {
  const planned = pitch[quarter]!;
  let cut = planned * share;
  // Most sides have none, and this is asked of every quarter of every plan.
  if (side.hand.bands.length === 0) return cut;
  for (const band of side.hand.bands) {
    const from = Math.max(quartersIn(side, band.fromSeconds), quarter);
    const until = Math.min(quartersIn(side, band.untilSeconds), quarter + share);
    cut += Math.max(0, until - from) * Math.max(0, band.pitch - planned);
  }
  return cut;
}

/** Radius at a program time, exact inside a quarter in which a band begins or ends. */
export function radiusAt(side: PlannedSide, { pitch, radius }: Plan, atSeconds: Seconds): Metres {
  const position = Math.min(Math.max(quartersIn(side, atSeconds), 0), side.count);
  const quarter = Math.min(Math.floor(position), side.count - 1);
  const cut = cutWithin(side, pitch, quarter, position - quarter);
  return radius[quarter]! - cut / QUARTERS_PER_TURN;
}
