import { type Complex, divide, multiply } from '../../src/analysis/complex.js';

// The recording formula as it is printed, apart from the product's: s = jω in every factor.
// Source: IEC 60098 (3180, 318 and 75 µs, 0 dB at 1 kHz); Butterworth's polynomials.

const ONE: Complex = { re: 1, im: 0 };

function sOf(hz: number): Complex {
  return { re: 0, im: 2 * Math.PI * hz };
}

/** 1 + s·seconds. */
function corner(hz: number, seconds: number): Complex {
  return { re: 1, im: 2 * Math.PI * hz * seconds };
}

function curve(hz: number): Complex {
  return divide(multiply(corner(hz, 3180e-6), corner(hz, 75e-6)), corner(hz, 318e-6));
}

/** H·B: velocity by program, 1 at 1 kHz but for the high-pass of second order at `subsonic`. */
export function exactVelocity(hz: number, subsonic = 20): Complex {
  const h = curve(hz);
  const at1k = Math.hypot(curve(1000).re, curve(1000).im);
  const shaped = multiply(h, highPass(hz, subsonic, 2));
  return { re: shaped.re / at1k, im: shaped.im / at1k };
}

/** H·B/s: displacement by program, seconds. */
export function exactDisplacement(hz: number, subsonic = 20): Complex {
  return divide(exactVelocity(hz, subsonic), sOf(hz));
}

/** H·B·s: acceleration by program, 1/s. */
export function exactAcceleration(hz: number, subsonic = 20): Complex {
  return multiply(exactVelocity(hz, subsonic), sOf(hz));
}

/** Butterworth high-pass: x/(1 + x), or x²/(1 + √2·x + x²), of x = s/ω0. */
export function highPass(hz: number, at: number, order: 1 | 2): Complex {
  const x: Complex = { re: 0, im: hz / at };
  if (order === 1) return divide(x, { re: 1, im: x.im });
  const square = multiply(x, x);
  return divide(square, { re: ONE.re + square.re, im: Math.SQRT2 * x.im });
}

/** Peak of a wall's displacement for a sine of this program amplitude, m: k·|H·B/s|·amplitude. */
export function wallAmplitude(hz: number, amplitude: number, fullScaleVelocity: number): number {
  const { re, im } = exactDisplacement(hz);
  return amplitude * fullScaleVelocity * Math.hypot(re, im);
}
