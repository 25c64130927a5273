/**
 * Modified Bessel function of the first kind, order 0, by its power series.
 * Source: Abramowitz & Stegun, Handbook of Mathematical Functions, 9.6.12.
 */
export function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-17; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}

/**
 * Kaiser window.
 * @param position −1 … 1 across the window; 0 outside
 * Source: Kaiser, Nonrecursive digital filter design using the I0-sinh window function, 1974.
 */
export function kaiser(position: number, beta: number): number {
  const inside = 1 - position * position;
  return inside < 0 ? 0 : besselI0(beta * Math.sqrt(inside)) / besselI0(beta);
}
