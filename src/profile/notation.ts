import * as z from 'zod';
import {
  LENGTH_PATTERN,
  PERCENT_PATTERN,
  PITCH_PATTERN,
  parsePercent,
  SPEED_PATTERN,
} from '../units.js';

/** Schemas of single profile fields. Each says what is expected; who reads adds what was found. */

const LENGTH_TEXT = 'expected a length with its unit (um, mm, mil, in), such as "50.8um" or "2mil"';
const PITCH_TEXT =
  'expected a pitch with its unit (um, mm, mil, in, lpi), such as "300lpi" or "85um"';
const SPEED_TEXT = 'expected a speed with its unit (cm/s, mm/s, m/s), such as "7cm/s"';

export const length = z.string({ error: LENGTH_TEXT }).regex(LENGTH_PATTERN, {
  error: LENGTH_TEXT,
});

export const pitch = z.string({ error: PITCH_TEXT }).regex(PITCH_PATTERN, { error: PITCH_TEXT });

export const speed = z.string({ error: SPEED_TEXT }).regex(SPEED_PATTERN, { error: SPEED_TEXT });

/** A number from `low` to `high`, both included. */
export function numberIn(low: number, high: number) {
  const error = `expected a number from ${low} to ${high}`;
  return z.number({ error }).min(low, { error }).max(high, { error });
}

/** A whole number from `low` to `high`, both included. */
export function wholeIn(low: number, high: number) {
  const error = `expected a whole number from ${low} to ${high}`;
  return z.int({ error }).min(low, { error }).max(high, { error });
}

/** A small ratio, plain or in per cent. */
export function ratioUpTo(high: number) {
  const error = `expected a ratio from 0 to ${high}, such as 0.001 or "0.1%"`;
  const percent = z
    .string({ error })
    .regex(PERCENT_PATTERN, { error })
    .refine((text) => (parsePercent(text) ?? Number.NaN) <= high, { error });
  return z.union([z.number({ error }).min(0, { error }).max(high, { error }), percent], { error });
}

/** One of a few values. */
export function oneOf<const Values extends readonly (string | number)[]>(values: Values) {
  const list = values.map((value) => JSON.stringify(value)).join(', ');
  return z.literal(values, { error: `expected one of ${list}` });
}

export const flag = z.boolean({ error: 'expected true or false' });
