import { isFamilyRate } from '../analysis/band-limit.js';
import type { ForecastedFile } from '../forecast-result.js';

/**
 * Why the places with the least land have no speed error that they hold to; empty where they were
 * looked at: the closer look needs the audio, at a rate of the 44.1 or 48 kHz family.
 */
export function unseenSpeed({ readFrom, sources }: ForecastedFile): string {
  if (readFrom === 'motion') {
    return 'Read from saved motion: what speed error they hold to was not looked at.';
  }
  if (sources.every(({ sampleRate }) => isFamilyRate(sampleRate))) return '';
  return 'At this sample rate, what speed error they hold to was not looked at.';
}
