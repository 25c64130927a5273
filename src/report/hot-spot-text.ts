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
    ...(survives === null ? [] : [survivesText(survives, units)].filter(Boolean)),
  ];
  return `${placeText(spot.atSeconds, settings)}: ${parts.join('; ')}.`;
}

function causeText(cause: HotSpotCause): string {
  switch (cause) {
    case 'lateral-low':
      return 'sideways bass';
    case 'lateral-high':
      return 'sideways treble';
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

function survivesText({ speed, depth, delay }: Survives, units: Units): string {
  const errors = [
    ...(speed === null ? [] : [`${shareText(speed)} of speed`]),
    ...(depth === null ? [] : [`${lengthText(depth, units)} of depth`]),
    ...(delay === null ? [] : [`${fixed(delay, 2)} s of delay`]),
  ];
  return errors.length === 0 ? '' : `survives ${errors.join(', ')}`;
}
