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

/** The number that a text is, or null for off. */
export function numberOrOff(text: string): number | null {
  return text === 'off' ? null : numberOf(text);
}
