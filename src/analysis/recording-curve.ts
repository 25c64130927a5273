import type { Hertz, Seconds } from '../units.js';
import { type Complex, divide, magnitude, polynomial } from './complex.js';

/** T1, bass. Source of the three: IEC 60098, and RIAA's standard for the same curve. */
export const BASS_SECONDS: Seconds = 3180e-6;
/** T2, the middle. */
export const MIDDLE_SECONDS: Seconds = 318e-6;
/** T3, treble. */
const TREBLE_SECONDS: Seconds = 75e-6;

/** s = j·2πf. */
export function laplace(frequency: Hertz): Complex {
  return { re: 0, im: 2 * Math.PI * frequency };
}

/** (1 + sT1)(1 + sT3)/(1 + sT2), unscaled. */
function timeConstants(frequency: Hertz): Complex {
  const zeros = [1, BASS_SECONDS + TREBLE_SECONDS, BASS_SECONDS * TREBLE_SECONDS];
  const s = laplace(frequency);
  return divide(polynomial(zeros, s), polynomial([1, MIDDLE_SECONDS], s));
}

/** What makes |H| = 1 at 1 kHz. */
const CURVE_SCALE = 1 / magnitude(timeConstants(1000));

/**
 * Recording characteristic H(s) = (1 + sT1)(1 + sT3)/(1 + sT2), |H| = 1 at 1 kHz: velocity cut per
 * program, the inverse of the replay curve without its 7950 µs constant.
 * Source: IEC 60098; RIAA.
 */
export function recordingCurve(frequency: Hertz): Complex {
  const value = timeConstants(frequency);
  return { re: value.re * CURVE_SCALE, im: value.im * CURVE_SCALE };
}

/**
 * Second-order Butterworth high-pass s²/(s² + √2·ω0·s + ω0²).
 * @param corner −3.01 dB
 */
export function butterworthHighPass2(frequency: Hertz, corner: Hertz): Complex {
  const w0 = 2 * Math.PI * corner;
  const s = laplace(frequency);
  return divide(polynomial([0, 0, 1], s), polynomial([w0 * w0, Math.SQRT2 * w0, 1], s));
}
