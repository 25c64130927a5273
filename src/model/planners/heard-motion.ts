import { QUARTERS_PER_TURN } from '../../analysis/motion.js';
import type { Settings } from '../../settings.js';
import type { PlannedRows } from '../planned-rows.js';
import { windowMaximum } from './window-maximum.js';

/**
 * What the lathe's automation hears at each planned quarter, m at level 0 dB: the largest `outward`
 * from there on for its advance, and the largest `inward` until there for its hold. It is the same
 * at every level.
 */
export function heardMotion(
  { outwardMax, inwardMax }: Pick<PlannedRows, 'outwardMax' | 'inwardMax'>,
  { machine }: Pick<Settings, 'machine'>,
): Float64Array {
  const advance = Math.round(QUARTERS_PER_TURN * machine.advanceTurns);
  const hold = Math.round(QUARTERS_PER_TURN * machine.holdTurns);
  const heard = new Float64Array(outwardMax.length);
  for (let quarter = 0; quarter < heard.length; quarter++) {
    heard[quarter] =
      windowMaximum(outwardMax, quarter, quarter + advance) +
      windowMaximum(inwardMax, quarter - hold, quarter);
  }
  return heard;
}
