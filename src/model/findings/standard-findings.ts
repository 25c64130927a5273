import type { Seconds } from '../../units.js';
import type { Finding } from '../forecast-types.js';
import { LENGTH_MARGIN } from '../limits.js';
import type { PlannedSide } from '../planned-side.js';
import { type Dimension, standardDimension } from '../standard-dimensions.js';
import { finding } from './finding.js';

/**
 * `off-standard`: where program starts, the pitch of lead-in, lead-out and marker bands, and the
 * finishing groove, as far as they lie outside what the standards allow. A band is told where it
 * lies.
 */
export function standardFindings({ settings, hand }: PlannedSide): Finding[] {
  const { disc, startDiameter, leadInPitch, leadOutPitch, finishingDiameter } = settings;
  const places: readonly (readonly [Dimension, number, Seconds | null])[] = [
    ['start', startDiameter, null],
    ['lead-in', leadInPitch, null],
    ['lead-out', leadOutPitch, null],
    ['finishing', finishingDiameter, null],
    ...hand.bands.map(({ pitch, fromSeconds }) => ['band', pitch, fromSeconds] as const),
  ];
  return places.flatMap(([detail, value, atSeconds]) => {
    const { least, most } = standardDimension(detail, disc);
    const limit =
      value < least - LENGTH_MARGIN ? least : value > most + LENGTH_MARGIN ? most : null;
    if (limit === null) return [];
    return [finding('off-standard', 'note', { atSeconds, value, limit, unit: 'metre', detail })];
  });
}
