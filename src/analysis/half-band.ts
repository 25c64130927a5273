import { kaiser } from './kaiser.js';

/**
 * A half-band low-pass in the form both directions use: beside the centre tap of ½, the taps at
 * the odd distances 1, 3, 5 … from it; those at even distances are 0. They sum to ¼, so that the
 * gain at DC is exactly 1.
 */
export type HalfBandTaps = Float64Array;

/**
 * Windowed half-band low-pass, corner at a quarter of the higher rate.
 * @param pairs number of odd taps on each side
 * @param beta Kaiser's shape parameter
 */
export function designHalfBand(pairs: number, beta: number): HalfBandTaps {
  const taps = new Float64Array(pairs);
  for (let pair = 0; pair < pairs; pair++) {
    const distance = 2 * pair + 1;
    const ideal = Math.sin((Math.PI * distance) / 2) / (Math.PI * distance);
    taps[pair] = ideal * kaiser(distance / (2 * pairs), beta);
  }
  const scale = 0.25 / taps.reduce((sum, tap) => sum + tap, 0);
  return taps.map((tap) => tap * scale);
}

/**
 * Twice the rate: y(2n) = x(n), y(2n+1) = 2·Σ h·(x(n−k) + x(n+1+k)). Silence outside.
 * @returns twice as many samples, y(2n) at the time of x(n)
 */
export function doubleRate(signal: Float64Array, taps: HalfBandTaps): Float64Array {
  const doubled = new Float64Array(2 * signal.length);
  for (let frame = 0; frame < signal.length; frame++) {
    let between = 0;
    for (let pair = 0; pair < taps.length; pair++) {
      between += taps[pair]! * ((signal[frame - pair] ?? 0) + (signal[frame + 1 + pair] ?? 0));
    }
    doubled[2 * frame] = signal[frame]!;
    doubled[2 * frame + 1] = 2 * between;
  }
  return doubled;
}

/** A signal of half the rate, and what the low-pass kept out of it (aliased, its power kept). */
export interface Halves {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * Half the rate: low(n) = ½x(2n) + Σ h·(x(2n−1−2k) + x(2n+1+2k)), high(n) = x(2n) − low(n).
 * Silence outside.
 * @returns half as many samples (rounded up), low(n) at the time of x(2n)
 */
export function halveRate(signal: Float64Array, taps: HalfBandTaps): Halves {
  const length = Math.ceil(signal.length / 2);
  const low = new Float64Array(length);
  const high = new Float64Array(length);
  for (let frame = 0; frame < length; frame++) {
    const at = 2 * frame;
    let around = 0;
    for (let pair = 0; pair < taps.length; pair++) {
      around += taps[pair]! * ((signal[at - 1 - 2 * pair] ?? 0) + (signal[at + 1 + 2 * pair] ?? 0));
    }
    low[frame] = 0.5 * signal[at]! + around;
    high[frame] = 0.5 * signal[at]! - around;
  }
  return { low, high };
}
