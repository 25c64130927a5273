import { type Metres, MIL } from '../units.js';
import { fixed, lengthText, type Units } from './length-text.js';

/** In mil always; mils are what width is spoken in. */
export function widthText(width: Metres, units: Units): string {
  const mil = `${fixed(width / MIL, 2)} mil`;
  return units === 'us' ? mil : `${mil} (${lengthText(width, units)})`;
}
