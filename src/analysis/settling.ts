import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';

/**
 * Periods of a high-pass's corner after which it has forgotten: a Butterworth of second order falls
 * by e^(−√2·π) a period, so that these are 231 dB.
 */
const PERIODS = 6;

/**
 * How long before a place the program must be heard so that it makes no difference there where the
 * hearing began: the chain's high-pass and the elliptical filter one after the other, which is
 * enough for both even where their corners are one. All other filters are over much sooner.
 */
export function settlingSeconds(settings: Settings): Seconds {
  const elliptical = settings.ellipticalHz === null ? 0 : PERIODS / settings.ellipticalHz;
  return (PERIODS / settings.subsonicHz + elliptical) * settings.speedFactor;
}
