import type { IntakeResult } from '../intake/intake-result.js';

/** Of each rule that a file could not be judged by, that and why. */
export function notJudgedTexts({ notJudged }: Pick<IntakeResult, 'notJudged'>): string[] {
  const why = 'only the sound tells, and this is saved motion';
  return notJudged.map((rule) => `${rule} is not judged: ${why}`);
}
