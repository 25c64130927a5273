import type { HotSpot, HotSpotCause } from '../model/forecast-types.js';
import type { Settings } from '../settings.js';
import { frequencyText, largeLengthText, lengthText, type Units } from './length-text.js';
import { safeText } from './safe-text.js';
import type { ScaleEvent } from './scale-rows.js';

/** What happens at a row of the scale, in few words; parts that may stand on lines of their own. */
export function scaleEventTexts(event: ScaleEvent, settings: Settings, units: Units): string[] {
  switch (event.kind) {
    case 'start':
      return ['the program starts'];
    case 'end':
      return ['the program ends'];
    case 'lead-out':
      return [`lead-out, ${largeLengthText(settings.leadOutPitch, units)} a turn`];
    case 'preferred':
      return [event.isReached ? 'preferred end' : 'preferred end, not reached'];
    case 'limit':
      return [event.isReached ? 'INNER LIMIT, ends too far in' : 'inner limit, not reached'];
    case 'finishing':
      return [event.isReached ? 'FINISHING GROOVE, no cut inside' : 'finishing groove'];
    case 'track':
      return [`track ${event.number}: ${safeText(event.name)}`];
    case 'spot':
      return spotTexts(event.spot, units);
  }
}

/** `LAND -4.8 µm`, `vertical, 55 Hz`. */
function spotTexts({ land, cause, frequency }: HotSpot, units: Units): string[] {
  const sound = frequency === null ? '' : `, ${frequencyText(frequency)}`;
  return [`LAND ${lengthText(land, units)}`, `${causeText(cause)}${sound}`];
}

function causeText(cause: HotSpotCause): string {
  switch (cause) {
    case 'lateral-low':
      return 'sideways bass';
    case 'lateral-high':
      return 'sideways';
    case 'vertical':
      return 'vertical';
    case 'width':
      return 'widened groove';
    case 'one-wall':
      return 'one wall';
  }
}
