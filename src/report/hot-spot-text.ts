import type { HotSpot, HotSpotCause, Survives } from '../model/forecast-types.js';
import type { HandTrack } from '../model/side-plan-input.js';
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
import { trackPlaceText } from './track-place.js';

/** One of the places with the least land in full: where, how much, why, and what it survives. */
export function hotSpotText(
  spot: HotSpot,
  settings: Settings,
  units: Units,
  tracks?: readonly HandTrack[],
): string {
  const { wall, survives } = spot;
  const parts = [
    `land ${lengthText(spot.land, units)} (${lengthText(spot.landNominal, units)} on a perfect lathe)`,
    `pitch ${pitchText(spot.pitch, units)} at diameter ${largeLengthText(2 * spot.radius, units)}`,
    causeText(spot),
    ...(wall === 'both' ? [] : [`${wall} wall`]),
    ...(spot.overcutDepth > 0 ? [overcutText(spot, units)] : []),
    ...(survives === null ? [] : [survivesText(spot, survives, settings, units)].filter(Boolean)),
  ];
  const track = trackPlaceText(spot.atSeconds, tracks);
  const place = placeText(spot.atSeconds, settings);
  return `${place}${track === '' ? '' : `, ${track}`}: ${parts.join('; ')}.`;
}

/** What takes the land, with its frequency where it has one: `sideways bass, 57 Hz`. */
function causeText({ cause, frequency }: HotSpot): string {
  const words = causeWords(cause);
  return frequency === null ? words : `${words}, ${frequencyText(frequency)}`;
}

function causeWords(cause: HotSpotCause): string {
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

/** How deep two walls meet, and whether that is heard. */
export function overcutText({ overcutDepth, reachesContact }: HotSpot, units: Units): string {
  const reach = reachesContact
    ? 'down to where the stylus runs: heard, or it skips'
    : 'above where the stylus runs: seen, not heard';
  return `the walls meet ${lengthText(overcutDepth, units)} deep, ${reach}`;
}

/**
 * How far off the lathe may be, each error alone, until the walls meet; a delay that is null holds
 * however late, and is told by the lathe's clock, since it is the lathe that is late. An overcut by tolerances alone would hold to that only on a perfect lathe, one
 * without them to nothing.
 */
function survivesText(
  { land, landNominal }: HotSpot,
  { speed, depth, delay }: Survives,
  { speedFactor }: Settings,
  units: Units,
): string {
  if (landNominal <= 0) return '';
  const errors = [
    ...(speed === null ? [] : [`±${shareText(speed)} speed`]),
    ...(depth === null ? [] : [`±${lengthText(depth, units)} depth`]),
    ...(delay === null ? [] : [`${fixed(delay / speedFactor, 2)} s late`]),
  ];
  if (errors.length === 0) return '';
  return `${land < 0 ? 'on a perfect lathe it would hold to' : 'holds to'} ${errors.join(', ')}`;
}
