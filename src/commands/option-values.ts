import { InvalidArgumentError } from 'commander';

/** The number that a text on the command line is, as it stands. */
export function numberOf(text: string): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (!Number.isFinite(value)) throw new InvalidArgumentError('Expected a number.');
  return value;
}

/** The whole number from 1 on that a text is. */
export function countOf(text: string): number {
  const value = numberOf(text);
  if (!Number.isInteger(value) || value < 1) {
    throw new InvalidArgumentError('Expected a whole number from 1 on.');
  }
  return value;
}

/** The number that a text is, or off, which the parser would not hand on as null. */
export function numberOrOff(text: string): number | 'off' {
  return text === 'off' ? text : numberOf(text);
}
