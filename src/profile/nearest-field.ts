import { nearest } from './nearest.js';

/**
 * The known field that an unknown one was probably meant to be: one of the same name elsewhere, with
 * its path; else a like one beside it, or elsewhere; null if none is like it.
 * @param path where the unknown field stands, its own name last; places in lists are left out
 * @param known fields with their paths, names joined by points: `rpm`, `machine.gain`
 */
export function nearestField(
  path: readonly PropertyKey[],
  known: readonly string[],
): string | null {
  const names = path.filter((key) => typeof key !== 'number').map(String);
  const name = names.at(-1) ?? '';
  const same = known.find((field) => nameOf(field) === name);
  if (same !== undefined) return same;
  const parent = names.slice(0, -1).join('.');
  const beside = known.filter((field) => parentOf(field) === parent).map(nameOf);
  const near = nearest(name, beside);
  if (near !== null) return near;
  const elsewhere = nearest(name, known.map(nameOf)) ?? nearest(name, known);
  return known.find((field) => nameOf(field) === elsewhere || field === elsewhere) ?? null;
}

function nameOf(field: string): string {
  return field.slice(field.lastIndexOf('.') + 1);
}

function parentOf(field: string): string {
  return field.slice(0, Math.max(0, field.lastIndexOf('.')));
}
