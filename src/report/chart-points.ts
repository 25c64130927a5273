/**
 * A column as so many points: each the extreme of the quarters it stands for, so that none is
 * averaged away; where there are more points than quarters, a quarter has several. NaN where a
 * point has no finite value.
 * @param worst Math.min or Math.max
 */
export function chartPoints(
  column: Float64Array,
  count: number,
  worst: (one: number, other: number) => number,
): number[] {
  return Array.from({ length: count }, (_, point) => {
    const { from, to } = quartersOf(point, count, column.length);
    return column
      .subarray(from, to)
      .reduce((found, each) => (Number.isFinite(found) ? worstOf(found, each, worst) : each), NaN);
  });
}

/**
 * The quarters `from` ≤ quarter < `to` of a point: those that begin in it, quarter q in point
 * ⌊q·count/quarters⌋; where none does, the one that it lies in.
 */
function quartersOf(point: number, count: number, quarters: number) {
  if (quarters < count) {
    const from = Math.floor((point * quarters) / count);
    return { from, to: from + 1 };
  }
  const startOf = (each: number) => Math.ceil((each * quarters) / count);
  return { from: startOf(point), to: startOf(point + 1) };
}

function worstOf(
  found: number,
  each: number,
  worst: (one: number, other: number) => number,
): number {
  return Number.isFinite(each) ? worst(found, each) : found;
}
