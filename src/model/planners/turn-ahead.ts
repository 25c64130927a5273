import { QUARTERS_PER_TURN } from '../../analysis/motion.js';
import type { PlannedSide } from '../planned-side.js';
import { requiredAdvance } from '../required-advance.js';
import { closeLate, openEarly } from '../slew.js';
import { windowMaximum } from './window-maximum.js';

/**
 * The pitch that looks a turn ahead: p_j = max(base, R over quarters j − c … j + 4 + c), then the
 * slews; c is `timingTolerance`. Every quarter whose pitch is part of the advance at R_q holds R_q,
 * also when it is executed up to c quarters early or late.
 * @param facing h(t) + h(t − T) at the quarters' ends, m
 * @returns the wanted pitch per planned quarter, before pitchMax, m per turn
 */
export function turnAhead(side: PlannedSide, facing: Float64Array, gain: number): Float64Array {
  const { basePitch, settings } = side;
  const { timingTolerance, pitchOpenSlew, pitchCloseSlew } = settings;
  const required = requiredAdvance(side, facing, gain);
  const pitch = Float64Array.from(basePitch);
  for (let quarter = 0; quarter < pitch.length; quarter++) {
    const last = quarter + QUARTERS_PER_TURN + timingTolerance;
    const needed = windowMaximum(required, quarter - timingTolerance, last);
    if (needed > pitch[quarter]!) pitch[quarter] = needed;
  }
  openEarly(pitch, pitchOpenSlew);
  closeLate(pitch, pitchCloseSlew);
  return pitch;
}
