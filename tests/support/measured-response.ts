import { filterMotion } from '../../src/analysis/filter-motion.js';
import { designMotionFilter } from '../../src/analysis/motion-filter.js';
import { frequencyResponse } from '../reference-signals/frequency-response.mjs';

export interface Response {
  readonly db: readonly number[];
  readonly degrees: readonly number[];
}

/** Corner of the chain's high-pass in these measurements. */
const SUBSONIC_HZ = 20;
/** Where the impulse lies, at the base rate: the filter's removed delay has room before it. */
const IMPULSE_FRAME = 32;

/**
 * Response of furrow's own digital recording filter, from an impulse of the base rate to an internal
 * rate, with the chain's high-pass taken out by its formula: what is left for the velocity is the
 * recording characteristic alone.
 * @param scale velocity of a program of full scale at 1 kHz, m/s; dB are re 1 m/s or 1 m
 */
export function recordingResponse(
  quantity: 'velocity' | 'displacement',
  rate: number,
  frequencies: readonly number[],
  scale = 1,
): Response {
  const impulse = new Float64Array(rate);
  // Doubling gives every frame two.
  impulse[IMPULSE_FRAME] = 0.5;
  const motion = filterMotion(impulse, designMotionFilter(rate, SUBSONIC_HZ, scale))[quantity];
  const { db, degrees } = frequencyResponse(motion, frequencies, rate);
  const lateness = (hz: number): number => (-360 * IMPULSE_FRAME * hz) / (rate / 2);
  const highPass = frequencies.map(highPassAt);
  return {
    db: db.map((value, point) => value - highPass[point]!.db),
    degrees: degrees.map((value, point) =>
      wrapped(value - highPass[point]!.degrees - lateness(frequencies[point]!)),
    ),
  };
}

/** s²/(s² + √2·ω0·s + ω0²). Source: Butterworth polynomial of order 2. */
function highPassAt(hz: number): { db: number; degrees: number } {
  const x = hz / SUBSONIC_HZ;
  return {
    db: -10 * Math.log10(1 + x ** -4),
    degrees: 180 - (Math.atan2(Math.SQRT2 * x, 1 - x * x) * 180) / Math.PI,
  };
}

function wrapped(degrees: number): number {
  return degrees - 360 * Math.round(degrees / 360);
}
