import type { LinearProgram } from './linear-program.js';

/**
 * A linear program as the least Σ cost·x with G·x ≥ least: the two sides of a row apart, bounds as
 * rows. Row r of G has `values[n]` in column `columns[n]` for starts[r] ≤ n < starts[r + 1].
 */
export interface Inequalities {
  readonly cost: Float64Array;
  readonly least: Float64Array;
  readonly starts: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
  /** Per row of the program, where in G its need is, and its most; −1 where it has none. */
  readonly needAt: Int32Array;
  readonly mostAt: Int32Array;
}

/** Finite sides of rows only; a side "at most" is negated. */
export function inequalities(program: LinearProgram): Inequalities {
  const { cost, lower, upper, need, most, values } = program;
  const rows = emptyRows(2 * need.length + 2 * cost.length, 2 * values.length + 2 * cost.length);
  const needAt = addSides(rows, program, need, 1);
  const mostAt = addSides(rows, program, most, -1);
  addBounds(rows, lower, 1);
  addBounds(rows, upper, -1);
  return {
    cost,
    least: rows.least.subarray(0, rows.count),
    starts: rows.starts.subarray(0, rows.count + 1),
    columns: rows.columns.subarray(0, rows.entries),
    values: rows.values.subarray(0, rows.entries),
    needAt,
    mostAt,
  };
}

/** Rows of G so far, with room for more. */
interface GrowingRows extends Pick<Inequalities, 'least' | 'starts' | 'columns' | 'values'> {
  count: number;
  entries: number;
}

function emptyRows(count: number, entries: number): GrowingRows {
  return {
    least: new Float64Array(count),
    starts: new Int32Array(count + 1),
    columns: new Int32Array(entries),
    values: new Float64Array(entries),
    count: 0,
    entries: 0,
  };
}

/** @returns per row of the program where in G this side of it is; −1 where it has none */
function addSides(
  rows: GrowingRows,
  { starts, columns, values }: LinearProgram,
  bounds: Float64Array,
  sign: 1 | -1,
): Int32Array {
  const places = new Int32Array(bounds.length).fill(-1);
  let { count, entries } = rows;
  for (let row = 0; row < bounds.length; row++) {
    if (!Number.isFinite(bounds[row]!)) continue;
    for (let at = starts[row]!; at < starts[row + 1]!; at++) {
      rows.columns[entries] = columns[at]!;
      rows.values[entries] = sign * values[at]!;
      entries += 1;
    }
    places[row] = count;
    rows.least[count] = sign * bounds[row]!;
    count += 1;
    rows.starts[count] = entries;
  }
  rows.count = count;
  rows.entries = entries;
  return places;
}

function addBounds(rows: GrowingRows, bounds: Float64Array, sign: 1 | -1): void {
  let { count, entries } = rows;
  for (let column = 0; column < bounds.length; column++) {
    if (!Number.isFinite(bounds[column]!)) continue;
    rows.columns[entries] = column;
    rows.values[entries] = sign;
    rows.least[count] = sign * bounds[column]!;
    entries += 1;
    count += 1;
    rows.starts[count] = entries;
  }
  rows.count = count;
  rows.entries = entries;
}
