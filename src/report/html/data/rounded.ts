/**
 * What a page's numbers are rounded to, as float32: the digits behind are what no output shows, and
 * do not pack. 2⁻³² m is 0.23 nm, a fortieth of the last digit of the finest length.
 */
const LENGTHS_A_METRE = 2 ** 32;
/** Significant bits of all else: 1.5e-5 of a number, 0.00013 dB. */
const BITS = 16;

/** @param length m; NaN stays */
export function roundedLength(length: number): number {
  return Math.round(length * LENGTHS_A_METRE) / LENGTHS_A_METRE;
}

/** Of any number but a length; 0, infinity and NaN stay. */
export function roundedNumber(value: number): number {
  if (value === 0 || !Number.isFinite(value)) return value;
  const scale = 2 ** (BITS - 1 - Math.floor(Math.log2(Math.abs(value))));
  return Math.round(value * scale) / scale;
}
