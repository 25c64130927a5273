// Source: Abramowitz & Stegun, Handbook of Mathematical Functions, table 9.8, which prints
// e^−x·I0(x); the values here are from memory, to nine of its ten digits.
import { expect, test } from 'vitest';
import { besselI0, kaiser } from '../../src/analysis/kaiser.js';

const TABLE_9_8: readonly (readonly [x: number, scaled: number])[] = [
  [0, 1],
  [1, 0.465759608],
  [2, 0.308508323],
  [5, 0.183540813],
  [10, 0.127833337],
];

test.each(TABLE_9_8)('e^−%i·I0 is the handbook value to nine digits', (x, scaled) => {
  expect(Math.exp(-x) * besselI0(x)).toBeWithin(scaled, 0.5e-9);
});

test('the integral ∫ e^(x·cos θ) dθ/π over half a circle is I0, by the same handbook, 9.6.16', () => {
  for (const x of [0.3, 3, 7, 9.5]) {
    // The midpoint rule of a periodic function is exact but for rounding.
    const steps = 200;
    const angles = Array.from({ length: steps }, (_, n) => ((n + 0.5) * Math.PI) / steps);
    const mean = angles.reduce((sum, angle) => sum + Math.exp(x * Math.cos(angle)), 0) / steps;
    expect(besselI0(x)).toBeWithin(mean, 0, 1e-13);
  }
});

test('the window is 1 in the middle, 1/I0(β) at its ends and 0 outside, and is even', () => {
  expect(kaiser(0, 7)).toBe(1);
  expect(kaiser(1, 7)).toBeWithin(1 / besselI0(7), 0, 1e-15);
  expect(kaiser(1.001, 7)).toBe(0);
  expect(kaiser(-0.3, 7)).toBe(kaiser(0.3, 7));
  expect(kaiser(0.5, 7)).toBeWithin(besselI0(7 * Math.sqrt(0.75)) / besselI0(7), 0, 1e-15);
});
