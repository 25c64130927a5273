import { QUARTERS_PER_TURN } from '../../analysis/motion.js';
import type { PlannedSide } from '../planned-side.js';
import { setRequired } from '../required-advance.js';
import { closeLate, openEarly } from '../slew.js';
import { windowMaximum } from './window-maximum.js';

/**
 * The pitch that looks a turn ahead: p_j = max(base, R over quarters j − c … j + 4 + c), then the
 * slews; c is `timingTolerance`. Every quarter whose pitch is part of the advance at R_q holds R_q,
 * also when it is executed up to c quarters early or late.
 * @param facing h(t) + h(t − T) at the quarters' ends, m
 * @param pitch becomes what is wanted, per planned quarter, before pitchMax, m per turn
 * @param required as long; holds nothing that is wanted, then or later
 */
export function turnAhead(
  side: PlannedSide,
  facing: Float64Array,
  gain: number,
  pitch: Float64Array,
  required: Float64Array,
): void {
  const { basePitch, settings } = side;
  const { timingTolerance, pitchOpenSlew, pitchCloseSlew } = settings;
  setRequired(required, side, facing, gain);
  pitch.set(basePitch);
  for (let quarter = 0; quarter < pitch.length; quarter++) {
    const last = quarter + QUARTERS_PER_TURN + timingTolerance;
    const needed = windowMaximum(required, quarter - timingTolerance, last);
    if (needed > pitch[quarter]!) pitch[quarter] = needed;
  }
  openEarly(pitch, pitchOpenSlew);
  closeLate(pitch, pitchCloseSlew);
}
