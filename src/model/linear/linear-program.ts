/**
 * A linear program: the least Σ cost·x with lower ≤ x ≤ upper and need ≤ A·x ≤ most. A is sparse, row
 * after row: row r has `values[n]` in column `columns[n]` for starts[r] ≤ n < starts[r + 1].
 */
export interface LinearProgram {
  /** One entry a column. */
  readonly cost: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** One entry a row; `most` is Infinity where nothing bounds it. */
  readonly need: Float64Array;
  readonly most: Float64Array;
  /** One more than there are rows. */
  readonly starts: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
}

/** An optimum: x, and per row how much the optimum would grow with its bound. */
export interface LinearOptimum {
  readonly x: Float64Array;
  readonly duals: Float64Array;
}
