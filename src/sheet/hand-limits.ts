import { cutDepth } from '../model/groove.js';
import type { Settings } from '../settings.js';
import { formatLength, type Metres, type MetresPerTurn } from '../units.js';

/** What is wrong with a base pitch that a sheet sets, by the same rules as the profile's; or null. */
export function pitchMisfit(pitch: MetresPerTurn, { pitchMax }: Settings): string | null {
  if (!(pitch > 0 && pitch < Number.POSITIVE_INFINITY)) return 'found no pitch, expected one';
  // A pitch typed in lines per inch may differ from the limit in its last bit.
  if (pitch <= pitchMax * (1 + 1e-9)) return null;
  return `found ${formatLength(pitch)}, expected at most pitchMax, ${formatLength(pitchMax)}`;
}

/** The same of a base width. */
export function widthMisfit(width: Metres, settings: Settings): string | null {
  const { widthMin, depthMax, bottomRadius } = settings;
  if (!(width >= widthMin * (1 - 1e-9))) {
    return `found ${formatLength(width)}, expected at least widthMin, ${formatLength(widthMin)}`;
  }
  if (cutDepth(width, bottomRadius) <= depthMax * (1 + 1e-9)) return null;
  return `found ${formatLength(width)}, which is cut deeper than depthMax, ${formatLength(depthMax)}`;
}
