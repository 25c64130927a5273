import type { z } from 'zod';
import { nearest } from './nearest.js';
import { valueAt } from './value-at.js';

type Path = readonly PropertyKey[];

/**
 * What a schema refused, one line each: where, what was found, what was expected; for an unknown
 * key the nearest known one.
 * @param value what was checked
 * @param known names of the fields there are
 */
export function issueTexts(
  error: z.ZodError,
  value: unknown,
  known: readonly string[],
  placeOf: (path: Path) => string,
): string[] {
  return error.issues.flatMap((issue) => {
    if (issue.code !== 'unrecognized_keys') {
      const found = shown(valueAt(value, issue.path));
      return [`${placeOf(issue.path)}: found ${found}, ${expectation(issue.message)}`];
    }
    return issue.keys.map((key) => {
      const near = nearest(key, known);
      const hint = near === null ? 'see `furrow schema profile`' : `the nearest is "${near}"`;
      return `${placeOf([...issue.path, key])}: found an unknown field; ${hint}`;
    });
  });
}

/** Messages of our schemas begin with "expected"; the library's own are put behind it. */
function expectation(message: string): string {
  if (message.startsWith('expected')) return message;
  return message.replace(/^Invalid input: /, '');
}

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
