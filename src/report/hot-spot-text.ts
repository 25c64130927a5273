import type { HotSpot, HotSpotCause, Survives } from '../model/forecast-types.js';
import type { Settings } from '../settings.js';
import {
  fixed,
  frequencyText,
  largeLengthText,
  lengthText,
  pitchText,
  shareText,
  type Units,
} from './length-text.js';
import { placeText } from './place-text.js';

/** One of the places with the least land: where, how much, why, and what it would survive. */
export function hotSpotText(spot: HotSpot, settings: Settings, units: Units): string {
  const { frequency, wall, survives } = spot;
  const parts = [
    `land ${lengthText(spot.land, units)} (${lengthText(spot.landNominal, units)} on a perfect lathe)`,
    `pitch ${pitchText(spot.pitch, units)} at diameter ${largeLengthText(2 * spot.radius, units)}`,
    causeText(spot.cause) + (frequency === null ? '' : `, ${frequencyText(frequency)}`),
    ...(wall === 'both' ? [] : [`${wall} wall`]),
    ...(spot.overcutDepth > 0 ? [overcutText(spot, units)] : []),
    ...(survives === null ? [] : [survivesText(spot, survives, units)].filter(Boolean)),
  ];
  return `${placeText(spot.atSeconds, settings)}: ${parts.join('; ')}.`;
}

function causeText(cause: HotSpotCause): string {
  switch (cause) {
    case 'lateral-low':
      return 'sideways bass';
    case 'lateral-high':
      // Whatever is not the low band's, so also middle frequencies.
      return 'sideways';
    case 'vertical':
      return 'vertical motion';
    case 'width':
      return 'a widened groove';
    case 'one-wall':
      return 'one wall alone';
  }
}

function overcutText({ overcutDepth, reachesContact }: HotSpot, units: Units): string {
  const reach = reachesContact
    ? 'down to where the stylus runs: it will be heard or skip'
    : 'above where the stylus runs: it shows, but is not heard';
  return `the walls meet ${lengthText(overcutDepth, units)} deep, ${reach}`;
}

/**
 * How far off the lathe may be until the walls meet; a delay that is null holds however late. An
 * overcut by tolerances alone would survive that only on a perfect lathe, one without them nothing.
 */
function survivesText(
  { land, landNominal }: HotSpot,
  { speed, depth, delay }: Survives,
  units: Units,
): string {
  if (landNominal <= 0) return '';
  const errors = [
    ...(speed === null ? [] : [`${shareText(speed)} of speed`]),
    ...(depth === null ? [] : [`${lengthText(depth, units)} of depth`]),
    ...(delay === null ? [] : [`${fixed(delay, 2)} s of delay`]),
  ];
  if (errors.length === 0) return '';
  return `${land < 0 ? 'on a perfect lathe it would survive' : 'survives'} ${errors.join(', ')}`;
}
