import type * as z from 'zod';
import { nearestField } from './nearest-field.js';
import { valueAt } from './value-at.js';

type Path = readonly PropertyKey[];

/** Faults that are told: who wrote none of them by hand learns no more from thousands. */
const MOST_TOLD = 40;

/**
 * What a schema refused, one line each: where, what was found, what was expected; for an unknown
 * key the nearest known one. Of very many the first, and how many there are besides.
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
  const faults = error.issues.flatMap(faultsOf);
  const texts = faults.slice(0, MOST_TOLD).map(({ path, message }) => {
    if (message !== null) {
      return `${placeOf(path)}: found ${shown(valueAt(value, path))}, ${expectation(message)}`;
    }
    const hint = hintOf(nearestField(path, known), schemaName);
    return `${placeOf(path)}: found an unknown field; ${hint}`;
  });
  const more = faults.length - texts.length;
  return more === 0 ? texts : [...texts, `${placeOf([])}: ${more} more like these`];
}

/** One place that is wrong; without a message, a field that is not known. */
interface Fault {
  readonly path: Path;
  readonly message: string | null;
}

function faultsOf(issue: z.core.$ZodIssue): Fault[] {
  if (issue.code !== 'unrecognized_keys') return [{ path: issue.path, message: issue.message }];
  return issue.keys.map((key) => ({ path: [...issue.path, key], message: null }));
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
