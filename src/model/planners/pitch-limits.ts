import { QUARTERS_PER_TURN } from '../../analysis/motion.js';
import type { PlannedSide } from '../planned-side.js';
import type { BindingNeeds } from './binding-needs.js';
import { windowMaximum } from './window-maximum.js';

/** What a pitch may be besides wide enough, in units of the profile's base pitch. */
export interface PitchLimits {
  /** Per quarter; Infinity where nothing limits it. */
  readonly upper: Float64Array;
  /** Quarters after which the pitch is limited in how it goes on, ascending. */
  readonly slews: readonly number[];
  /** What the next quarter may hold more at least and at most, for each of those. */
  readonly least: Float64Array;
  readonly most: Float64Array;
}

/** What a limit may be passed by and yet be kept, of the base pitch: as the solver keeps its rows. */
const KEPT = 1e-9;

/** pitchMax, or the widest that is set by hand, and the slews after every quarter. */
export function pitchLimits(side: PlannedSide): PitchLimits {
  const { count, basePitch, settings } = side;
  const widest = basePitch.reduce((most, base) => Math.max(most, base), settings.pitchMax);
  return {
    upper: new Float64Array(count).fill(widest / settings.basePitch),
    slews: Array.from({ length: count - 1 }, (_, quarter) => quarter),
    least: new Float64Array(count - 1).fill(-settings.pitchCloseSlew / settings.basePitch),
    most: new Float64Array(count - 1).fill(settings.pitchOpenSlew / settings.basePitch),
  };
}

/**
 * Those of all limits that a tightest pitch is likely to come to. One quarter alone seldom holds
 * more than the need of any advance that it is part of beyond what base pitch gives; so on most
 * sides few slews are left, and the program has half as many rows. `keepsLimits` tells whether the
 * others held.
 */
export function likelyLimits(side: PlannedSide, { largest }: BindingNeeds): PitchLimits {
  const { basePitch, settings } = side;
  const { upper, least, most } = pitchLimits(side);
  const unit = settings.basePitch;
  const highest = basePitch.map((base, quarter) => {
    const need = windowMaximum(largest, quarter, quarter + QUARTERS_PER_TURN);
    return (base + QUARTERS_PER_TURN * Math.max(0, need - base)) / unit;
  });
  const slews: number[] = [];
  for (let quarter = 0; quarter < most.length; quarter++) {
    const opens = highest[quarter + 1]! - basePitch[quarter]! / unit;
    const closes = basePitch[quarter + 1]! / unit - highest[quarter]!;
    if (opens > most[quarter]! || closes < least[quarter]!) slews.push(quarter);
  }
  return {
    upper: upper.map((limit, quarter) =>
      highest[quarter]! < limit ? Number.POSITIVE_INFINITY : limit,
    ),
    slews,
    least: least.subarray(0, slews.length),
    most: most.subarray(0, slews.length),
  };
}

/** Whether a pitch keeps all limits. @param pitch in units of the profile's base pitch */
export function keepsLimits(side: PlannedSide, pitch: Float64Array): boolean {
  const { upper, least, most } = pitchLimits(side);
  for (let quarter = 0; quarter < pitch.length; quarter++) {
    if (pitch[quarter]! > upper[quarter]! + KEPT) return false;
    // After the last there is nothing to keep to: no comparison with undefined holds.
    const rise = pitch[quarter + 1]! - pitch[quarter]!;
    if (rise > most[quarter]! + KEPT || rise < least[quarter]! - KEPT) return false;
  }
  return true;
}
