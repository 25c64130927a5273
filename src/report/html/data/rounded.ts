/**
 * What a page's numbers are rounded to: the digits behind are what no output shows, and do not
 * pack. 2⁻³² m is 0.23 nm, a fortieth of the last digit of the finest length.
 */
const STEPS_A_METRE = 2 ** 32;
/** Bits behind the leading one, of all else: 1.5e-5 of a number, 0.00013 dB. */
const BITS = 15;
/** The exponent that a float64 has least, but for the denormal. */
const LEAST_EXPONENT = -1022;

/** Longer ones, 0.12 m, are no motion of a groove; their differences have to fit 31 bits. */
const MOST_STEPS = 2 ** 29;
/** A length in steps. @param length m; NaN counts as none */
export function lengthSteps(length: number): number {
  if (Number.isNaN(length)) return 0;
  return Math.min(MOST_STEPS, Math.max(-MOST_STEPS, Math.round(length * STEPS_A_METRE)));
}

export function lengthOfSteps(steps: number): number {
  return steps / STEPS_A_METRE;
}

/**
 * A number over 0 as an integer that grows with it: its exponent, and behind that BITS of it. All
 * else, NaN too, is 0.
 */
export function numberSteps(value: number): number {
  if (!(value >= 2 ** LEAST_EXPONENT) || value === Number.POSITIVE_INFINITY) return 0;
  const exponent = exponentOf(value);
  const digits = Math.round((value / 2 ** exponent) * 2 ** BITS);
  return (exponent - LEAST_EXPONENT) * 2 ** BITS + digits;
}

export function numberOfSteps(steps: number): number {
  if (steps === 0) return 0;
  const exponent = Math.floor(steps / 2 ** BITS) - 1;
  return (1 + (steps % 2 ** BITS) / 2 ** BITS) * 2 ** (exponent + LEAST_EXPONENT);
}

/** Where the steps of a number lie between one power of two and the next, in 32 parts. */
export function partOfOctave(steps: number): number {
  return (steps >> (BITS - 5)) & 31;
}

/** The power of two below the number of so many steps. */
export function octaveOf(steps: number): number {
  return steps === 0 ? 0 : (steps >> BITS) - 1 + LEAST_EXPONENT;
}

/** Powers of two are exact, and so are the comparisons: no logarithm that machines round apart. */
function exponentOf(value: number): number {
  let exponent = Math.floor(Math.log2(value));
  if (2 ** exponent > value) exponent -= 1;
  if (2 ** (exponent + 1) <= value) exponent += 1;
  return exponent;
}

/** @param length m */
export function roundedLength(length: number): number {
  return lengthOfSteps(lengthSteps(length));
}

/** Of any number but a length. */
export function roundedNumber(value: number): number {
  return numberOfSteps(numberSteps(value));
}
