import { type BandedMatrix, factorBanded, solveFactored } from './banded-matrix.js';
import { addColumnsTimes, type Inequalities, setRowsTimes } from './inequalities.js';
import { emptyNormalMatrix, setNormalMatrix } from './normal-matrix.js';

/**
 * Where the search stands, or a step from there: x, the slack s of each row, and its price z. Slacks
 * and prices of a place are positive.
 */
export interface Point {
  readonly x: Float64Array;
  readonly slack: Float64Array;
  readonly price: Float64Array;
}

export function emptyPoint({ cost, least }: Inequalities): Point {
  return {
    x: new Float64Array(cost.length),
    slack: new Float64Array(least.length),
    price: new Float64Array(least.length),
  };
}

/** Newton's steps towards cost = Gᵀ·z, least + s = G·x and products s·z that are wanted. */
export class NewtonStep {
  readonly #rows: Inequalities;
  readonly #matrix: BandedMatrix;
  readonly #change: Float64Array;
  readonly #pull: Float64Array;
  /** least + s − G·x, by row, of the last point. */
  readonly short: Float64Array;
  /** cost − Gᵀ·z, by column, of the last point. */
  readonly unpriced: Float64Array;

  constructor(rows: Inequalities) {
    this.#rows = rows;
    this.#matrix = emptyNormalMatrix(rows);
    this.#change = new Float64Array(rows.least.length);
    this.#pull = new Float64Array(rows.least.length);
    this.short = new Float64Array(rows.least.length);
    this.unpriced = new Float64Array(rows.cost.length);
  }

  /** Measures how far a point is off. */
  measure({ x, slack, price }: Point): void {
    const { least, cost } = this.#rows;
    setRowsTimes(this.short, this.#rows, x);
    for (let row = 0; row < least.length; row++) {
      this.short[row] = least[row]! + slack[row]! - this.short[row]!;
    }
    for (let row = 0; row < least.length; row++) this.#pull[row] = -price[row]!;
    this.unpriced.set(cost);
    addColumnsTimes(this.unpriced, this.#rows, this.#pull);
  }

  /** Prepares all steps from the point that was measured last: one factorisation serves them. */
  prepare({ slack, price }: Point): void {
    for (let row = 0; row < slack.length; row++) this.#pull[row] = price[row]! / slack[row]!;
    setNormalMatrix(this.#matrix, this.#rows, this.#pull);
    factorBanded(this.#matrix);
  }

  /**
   * Sets `step` to the one that takes to 0, to first order, what the point is off.
   * @param wanted s·z, by row
   */
  set(step: Point, { slack, price }: Point, wanted: (row: number) => number): void {
    const { short, unpriced } = this;
    for (let row = 0; row < slack.length; row++) {
      const change = wanted(row) - price[row]! * slack[row]!;
      this.#change[row] = change;
      this.#pull[row] = (change + price[row]! * short[row]!) / slack[row]!;
    }
    for (let column = 0; column < unpriced.length; column++) step.x[column] = -unpriced[column]!;
    addColumnsTimes(step.x, this.#rows, this.#pull);
    solveFactored(this.#matrix, step.x);
    setRowsTimes(step.slack, this.#rows, step.x);
    for (let row = 0; row < slack.length; row++) {
      step.slack[row]! -= short[row]!;
      step.price[row] = (this.#change[row]! - price[row]! * step.slack[row]!) / slack[row]!;
    }
  }
}
