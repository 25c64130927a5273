import type { Finding } from '../forecast-types.js';
import { type PlannedSide, quarterStart } from '../planned-side.js';
import { strongestBass } from '../strongest-frequency.js';
import { finding } from './finding.js';
import { spansOf } from './spans.js';

/**
 * `low-vertical`: the low band moves an unmodulated groove of base width vertically by more than
 * half of what widthMin leaves of it, (baseWidth − widthMin)/2. Neighbouring quarters as one.
 */
export function bassFindings(side: PlannedSide, gain: number): Finding[] {
  const { settings, lead, programCount, motion } = side;
  const limit = (settings.baseWidth - settings.widthMin) / 2 / 2;
  const vertical = motion.lowBand.verticalAmplitude;
  const spans = spansOf(
    0,
    programCount,
    (quarter) => gain * vertical[quarter]! > limit,
    (a, b) => vertical[a]! > vertical[b]!,
  );
  return spans.map(({ first, last, worst }) =>
    finding('low-vertical', 'caution', {
      atSeconds: quarterStart(side, lead + first),
      untilSeconds: quarterStart(side, lead + last + 1),
      value: gain * vertical[worst]!,
      limit,
      unit: 'metre',
      wall: 'both',
      frequency: strongestBass(motion, worst),
    }),
  );
}
