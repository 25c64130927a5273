/**
 * Largest entry of `row` from `first` to `last`, both included; entries outside of the row count
 * as nothing. −Infinity if none is inside.
 */
export function windowMaximum(row: Float64Array, first: number, last: number): number {
  let largest = Number.NEGATIVE_INFINITY;
  const end = Math.min(last, row.length - 1);
  for (let at = Math.max(0, first); at <= end; at++) largest = Math.max(largest, row[at]!);
  return largest;
}

/** Smallest entry of `row` from `first` to `last`, likewise; Infinity if none is inside. */
export function windowMinimum(row: Float64Array, first: number, last: number): number {
  let smallest = Number.POSITIVE_INFINITY;
  const end = Math.min(last, row.length - 1);
  for (let at = Math.max(0, first); at <= end; at++) smallest = Math.min(smallest, row[at]!);
  return smallest;
}
