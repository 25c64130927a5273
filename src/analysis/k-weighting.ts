import type { Hertz } from '../units.js';
import type { Biquad } from './biquad.js';

/**
 * The two sections of the K-weighting, for any rate: the analogue prototypes of the standard's
 * 48 kHz coefficients by the bilinear transform.
 * Source: ITU-R BS.1770-4, annex 1, tables 1 and 2; the prototypes' corners, gain and Q from
 * memory, checked against the tables by test.
 */
export function designKWeighting(rate: Hertz): readonly [Biquad, Biquad] {
  return [designShelf(rate), designLowCut(rate)];
}

function designShelf(rate: Hertz): Biquad {
  const k = Math.tan((Math.PI * 1681.974450955533) / rate);
  const quality = 0.7071752369554196;
  const high = 10 ** (3.999843853973347 / 20);
  const middle = high ** 0.4996667741545416;
  const a0 = 1 + k / quality + k * k;
  return {
    b0: (high + (middle * k) / quality + k * k) / a0,
    b1: (2 * (k * k - high)) / a0,
    b2: (high - (middle * k) / quality + k * k) / a0,
    a1: (2 * (k * k - 1)) / a0,
    a2: (1 - k / quality + k * k) / a0,
  };
}

function designLowCut(rate: Hertz): Biquad {
  const k = Math.tan((Math.PI * 38.13547087602444) / rate);
  const quality = 0.5003270373238773;
  const a0 = 1 + k / quality + k * k;
  return {
    b0: 1,
    b1: -2,
    b2: 1,
    a1: (2 * (k * k - 1)) / a0,
    a2: (1 - k / quality + k * k) / a0,
  };
}
