/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export function multiply(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

export function divide(a: Complex, b: Complex): Complex {
  const power = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / power, im: (a.im * b.re - a.re * b.im) / power };
}

/** e^(j·angle). */
export function unitPhasor(angle: number): Complex {
  return { re: Math.cos(angle), im: Math.sin(angle) };
}

/** Value of c0 + c1·x + c2·x² … */
export function polynomial(coefficients: ArrayLike<number>, x: Complex): Complex {
  let value: Complex = { re: 0, im: 0 };
  for (let power = coefficients.length - 1; power >= 0; power--) {
    const product = multiply(value, x);
    value = { re: product.re + coefficients[power]!, im: product.im };
  }
  return value;
}

export function magnitude(a: Complex): number {
  return Math.hypot(a.re, a.im);
}
