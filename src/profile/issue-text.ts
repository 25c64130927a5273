import type { z } from 'zod';
import { nearestField } from './nearest-field.js';
import { valueAt } from './value-at.js';

type Path = readonly PropertyKey[];

/**
 * What a schema refused, one line each: where, what was found, what was expected; for an unknown
 * key the nearest known one.
 * @param value what was checked
 * @param known the fields there are; one inside of another has the other's name and a point before it
 * @param schemaName what `furrow schema` calls the schema
 */
export function issueTexts(
  error: z.ZodError,
  value: unknown,
  known: readonly string[],
  placeOf: (path: Path) => string,
  schemaName = 'profile',
): string[] {
  return error.issues.flatMap((issue) => {
    if (issue.code !== 'unrecognized_keys') {
      const found = shown(valueAt(value, issue.path));
      return [`${placeOf(issue.path)}: found ${found}, ${expectation(issue.message)}`];
    }
    return issue.keys.map((key) => {
      const path = [...issue.path, key];
      const hint = hintOf(nearestField(path, known), schemaName);
      return `${placeOf(path)}: found an unknown field; ${hint}`;
    });
  });
}

function hintOf(field: string | null, schemaName: string): string {
  if (field === null) return `see \`furrow schema ${schemaName}\``;
  const point = field.lastIndexOf('.');
  if (point < 0) return `the nearest is "${field}"`;
  return `the nearest is "${field.slice(point + 1)}" inside of "${field.slice(0, point)}"`;
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
