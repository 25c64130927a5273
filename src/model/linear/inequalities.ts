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
  const least: number[] = [];
  const starts = [0];
  const columns: number[] = [];
  const values: number[] = [];
  /** @returns where in G the row is */
  const close = (sign: 1 | -1, bound: number) => {
    least.push(sign * bound);
    starts.push(columns.length);
    return least.length - 1;
  };
  const side = (row: number, sign: 1 | -1, bound: number) => {
    if (!Number.isFinite(bound)) return -1;
    for (let at = program.starts[row]!; at < program.starts[row + 1]!; at++) {
      columns.push(program.columns[at]!);
      values.push(sign * program.values[at]!);
    }
    return close(sign, bound);
  };
  const limit = (column: number, sign: 1 | -1, bound: number) => {
    columns.push(column);
    values.push(sign);
    close(sign, bound);
  };
  const needAt = program.need.map((need, row) => side(row, 1, need));
  const mostAt = program.most.map((most, row) => side(row, -1, most));
  for (const [column, least] of program.lower.entries()) limit(column, 1, least);
  for (const [column, most] of program.upper.entries()) limit(column, -1, most);
  return {
    cost: program.cost,
    least: Float64Array.from(least),
    starts: Int32Array.from(starts),
    columns: Int32Array.from(columns),
    values: Float64Array.from(values),
    needAt: Int32Array.from(needAt),
    mostAt: Int32Array.from(mostAt),
  };
}

/** Sets `product` to G·x. */
export function setRowsTimes(product: Float64Array, of: Inequalities, x: Float64Array): void {
  const { starts, columns, values } = of;
  for (let row = 0; row < product.length; row++) {
    let sum = 0;
    for (let at = starts[row]!; at < starts[row + 1]!; at++) sum += values[at]! * x[columns[at]!]!;
    product[row] = sum;
  }
}

/** Adds Gᵀ·y to `sums`. */
export function addColumnsTimes(sums: Float64Array, of: Inequalities, y: Float64Array): void {
  const { starts, columns, values } = of;
  for (let row = 0; row < y.length; row++) {
    const factor = y[row]!;
    for (let at = starts[row]!; at < starts[row + 1]!; at++) {
      sums[columns[at]!]! += factor * values[at]!;
    }
  }
}
