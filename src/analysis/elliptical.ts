import { type Biquad, filterBiquad } from './biquad.js';
import type { Stereo } from './stereo.js';

/**
 * Elliptical filter: a high-pass on the difference alone, so that the bass moves sideways only.
 * L′ = (L + R)/2 + E·(L − R)/2, R′ = (L + R)/2 − E·(L − R)/2.
 */
export function applyElliptical(program: Stereo, highPass: Biquad): Stereo {
  const { left, right } = program;
  const side = filterBiquad(
    left.map((value, n) => (value - right[n]!) / 2),
    highPass,
  );
  return {
    left: side.map((value, n) => (left[n]! + right[n]!) / 2 + value),
    right: side.map((value, n) => (left[n]! + right[n]!) / 2 - value),
  };
}
