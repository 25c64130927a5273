import type { Metres, MetresPerTurn, Seconds } from '../units.js';
import { FIRST_JUDGED, LENGTH_MARGIN } from './limits.js';
import type { Plan } from './plan.js';
import { type PlannedSide, quarterStart } from './planned-side.js';
import { verify } from './verify.js';

/**
 * The pitch to which a turn must be opened so that between two times no land is under `landLeast`:
 * the largest A + what is missing there. Held over the turn before each such place, A is at least
 * that.
 * @returns null where nothing is missing
 */
export function openedPitch(
  side: PlannedSide,
  plan: Plan,
  { fromSeconds, untilSeconds }: { readonly fromSeconds: Seconds; readonly untilSeconds: Seconds },
  landLeast: Metres,
): MetresPerTurn | null {
  const { land } = verify(side, plan);
  let pitch = 0;
  for (let quarter = FIRST_JUDGED; quarter < side.count; quarter++) {
    const start = quarterStart(side, quarter);
    const isThere = start + side.quarterSeconds > fromSeconds && start < untilSeconds;
    if (!isThere || land[quarter]! >= landLeast) continue;
    const advance = Math.max(plan.advance[quarter]!, plan.advance[quarter + 1]!);
    pitch = Math.max(pitch, advance + landLeast - land[quarter]!);
  }
  return pitch === 0 ? null : pitch + LENGTH_MARGIN;
}
