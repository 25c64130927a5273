import type { Biquad } from '../analysis/biquad.js';
import type { Hertz } from '../units.js';

/** Width of the bell: it reaches half of its decibels at 0.62 and 1.62 times its frequency. */
const BELL_Q = 1;

/**
 * Gain of `gainDb` at `frequency`, 0 dB far from it; minimum phase.
 * Source: R. Bristow-Johnson, Cookbook formulae for audio EQ biquad filter coefficients, peaking
 * EQ, from memory; checked against the analogue prototype's response.
 * @param frequency under half of `rate`
 */
export function bellFilter(frequency: Hertz, gainDb: number, rate: Hertz): Biquad {
  const amplitude = 10 ** (gainDb / 40);
  const angle = (2 * Math.PI * frequency) / rate;
  const alpha = Math.sin(angle) / (2 * BELL_Q);
  return scaled(1 + alpha / amplitude, {
    b0: 1 + alpha * amplitude,
    b1: -2 * Math.cos(angle),
    b2: 1 - alpha * amplitude,
    a1: -2 * Math.cos(angle),
    a2: 1 - alpha / amplitude,
  });
}

/**
 * 0 dB far under `frequency`, half of `gainDb` at it, `gainDb` far above; slope 1; minimum phase.
 * Source: as above, high shelf, from memory.
 */
export function shelfFilter(frequency: Hertz, gainDb: number, rate: Hertz): Biquad {
  const a = 10 ** (gainDb / 40);
  const angle = (2 * Math.PI * frequency) / rate;
  const cosine = Math.cos(angle);
  const wide = 2 * Math.sqrt(a) * (Math.sin(angle) / Math.SQRT2);
  return scaled(a + 1 - (a - 1) * cosine + wide, {
    b0: a * (a + 1 + (a - 1) * cosine + wide),
    b1: -2 * a * (a - 1 + (a + 1) * cosine),
    b2: a * (a + 1 + (a - 1) * cosine - wide),
    a1: 2 * (a - 1 - (a + 1) * cosine),
    a2: a + 1 - (a - 1) * cosine - wide,
  });
}

function scaled(a0: number, { b0, b1, b2, a1, a2 }: Biquad): Biquad {
  return { b0: b0 / a0, b1: b1 / a0, b2: b2 / a0, a1: a1 / a0, a2: a2 / a0 };
}
