import type { Hertz } from '../units.js';

/** y(n) = b0·x(n) + b1·x(n−1) + b2·x(n−2) − a1·y(n−1) − a2·y(n−2). */
export interface Biquad {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/**
 * Butterworth high-pass of order 1 or 2 by the bilinear transform, corner prewarped.
 * @param corner −3.01 dB, Hz
 */
export function designHighPass(order: 1 | 2, corner: Hertz, rate: Hertz): Biquad {
  const warped = Math.tan((Math.PI * corner) / rate);
  if (order === 1) {
    const scale = 1 / (1 + warped);
    return { b0: scale, b1: -scale, b2: 0, a1: (warped - 1) * scale, a2: 0 };
  }
  const scale = 1 / (1 + Math.SQRT2 * warped + warped * warped);
  return {
    b0: scale,
    b1: -2 * scale,
    b2: scale,
    a1: 2 * (warped * warped - 1) * scale,
    a2: (1 - Math.SQRT2 * warped + warped * warped) * scale,
  };
}

/** Runs a section from rest over a whole signal. */
export function filterBiquad(signal: Float64Array, section: Biquad): Float64Array {
  const { b0, b1, b2, a1, a2 } = section;
  const filtered = new Float64Array(signal.length);
  for (let n = 0; n < signal.length; n++) {
    filtered[n] =
      b0 * signal[n]! +
      b1 * (signal[n - 1] ?? 0) +
      b2 * (signal[n - 2] ?? 0) -
      a1 * (filtered[n - 1] ?? 0) -
      a2 * (filtered[n - 2] ?? 0);
  }
  return filtered;
}
