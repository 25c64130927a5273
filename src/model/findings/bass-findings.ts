import type { Finding } from '../forecast-types.js';
import { type PlannedSide, quarterStart } from '../planned-side.js';
import { strongestBass } from '../strongest-frequency.js';
import { finding } from './finding.js';
import { spansOf } from './spans.js';

/**
 * `low-vertical`: the low band moves an unmodulated groove vertically by more than half of what
 * widthMin leaves of its base width, (baseWidth − widthMin)/2, the narrower end of the quarter.
 * Neighbouring quarters as one.
 */
export function bassFindings(side: PlannedSide, gain: number): Finding[] {
  const { settings, baseNodes, lead, programCount, motion } = side;
  const vertical = motion.lowBand.verticalAmplitude;
  const limitOf = (quarter: number) => {
    const node = lead + quarter;
    const narrower = Math.min(baseNodes[node]!, baseNodes[node + 1]!);
    return (2 * narrower - settings.widthMin) / 2 / 2;
  };
  const excess = (quarter: number) => gain * vertical[quarter]! - limitOf(quarter);
  const spans = spansOf(
    0,
    programCount,
    (quarter) => excess(quarter) > 0,
    (a, b) => excess(a) > excess(b),
  );
  return spans.map(({ first, last, worst }) =>
    finding('low-vertical', 'caution', {
      atSeconds: quarterStart(side, lead + first),
      untilSeconds: quarterStart(side, lead + last + 1),
      value: gain * vertical[worst]!,
      limit: limitOf(worst),
      unit: 'metre',
      wall: 'both',
      frequency: strongestBass(motion, worst),
    }),
  );
}
