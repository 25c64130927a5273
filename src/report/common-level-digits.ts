import { fixed, levelText } from './length-text.js';

const MOST_DIGITS = 3;

/** A level of a control with steps of `levelStep`, with the digits that tell its steps apart. */
export function stepLevelText(levelDb: number, levelStep: number): string {
  return levelText(levelDb, digitsOf(levelStep) - 1);
}

/** A level as it is typed: `-3`, `0.25`. */
export function levelOption(levelDb: number): string {
  return `--level ${Number(fixed(levelDb, MOST_DIGITS))}`;
}

/** Digits behind the point that a step needs, one at least. */
function digitsOf(levelStep: number): number {
  for (let digits = 1; digits < MOST_DIGITS; digits++) {
    if (Math.abs(Number(levelStep.toFixed(digits)) - levelStep) < 1e-9) return digits;
  }
  return MOST_DIGITS;
}
