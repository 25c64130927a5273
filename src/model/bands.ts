import type { PlannedSide } from './planned-side.js';

/**
 * Mean pitch of each planned quarter as it is cut: inside a marker band its pitch overrides the
 * planned one, wherever the slews would be. A band opens the pitch; one that is tighter than the
 * plan does not close it. Without bands it is `pitch` itself.
 * The advance that land is made of is not told of bands: made by hand, a band comes 0.3 s early or
 * late, and where it does not lie the lathe cuts what is planned.
 * @param pitch as planned, m per turn
 */
export function withBands(
  { hand: { bands }, lead, quarterSeconds }: PlannedSide,
  pitch: Float64Array,
): Float64Array {
  if (bands.length === 0) return pitch;
  const cut = Float64Array.from(pitch);
  for (const band of bands) {
    const from = band.fromSeconds / quarterSeconds + lead;
    const until = band.untilSeconds / quarterSeconds + lead;
    const first = Math.max(0, Math.floor(from));
    for (let quarter = first; quarter < Math.min(until, pitch.length); quarter++) {
      const share = Math.min(until, quarter + 1) - Math.max(from, quarter);
      cut[quarter]! += share * Math.max(0, band.pitch - pitch[quarter]!);
    }
  }
  return cut;
}
