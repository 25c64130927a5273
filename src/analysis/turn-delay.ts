import { INTERPOLATION_TAPS, interpolationTaps } from './interpolate.js';

/**
 * A signal later by a number of frames, whole or not. Silence before it.
 * @returns as many frames as the signal has
 */
export function delaySignal(signal: Float64Array, delay: number): Float64Array {
  const whole = Math.ceil(delay);
  if (whole === delay) return signal.map((_, n) => signal[n - whole] ?? 0);
  const taps = interpolationTaps(whole - delay);
  return signal.map((_, n) =>
    taps.reduce(
      (sum, tap, k) => sum + tap * (signal[n - whole + k - (INTERPOLATION_TAPS / 2 - 1)] ?? 0),
      0,
    ),
  );
}
