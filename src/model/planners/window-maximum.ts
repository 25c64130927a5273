/**
 * Largest entry of `row` from `first` to `last`, both included; entries outside of the row count
 * as nothing. −Infinity if none is inside.
 */
export function windowMaximum(row: Float64Array, first: number, last: number): number {
  let largest = Number.NEGATIVE_INFINITY;
  const end = last < row.length ? last : row.length - 1;
  let at = first;
  if (at < 0) at = 0;
  for (; at <= end; at++) {
    if (row[at]! > largest) largest = row[at]!;
  }
  return largest;
}

/** Smallest entry of `row` from `first` to `last`, likewise; Infinity if none is inside. */
export function windowMinimum(row: Float64Array, first: number, last: number): number {
  let smallest = Number.POSITIVE_INFINITY;
  const end = last < row.length ? last : row.length - 1;
  let at = first;
  if (at < 0) at = 0;
  for (; at <= end; at++) {
    if (row[at]! < smallest) smallest = row[at]!;
  }
  return smallest;
}
