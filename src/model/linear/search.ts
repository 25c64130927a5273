import { type BandedMatrix, factorBanded, solveFactored } from './banded-matrix.js';
import type { Inequalities } from './inequalities.js';
import { emptyNormalMatrix, setNormalMatrix } from './normal-matrix.js';
import { aimRows, moveRows, stepRows } from './search-rows.js';

/**
 * A search for x, the slack s of each row and its price z with least + s = G·x, cost = Gᵀ·z and
 * s·z = 0 in each row. Slacks and prices of a place are positive. It starts from prices of 1 and
 * slacks of at least 1.
 */
export class Search {
  readonly rows: Inequalities;
  readonly x: Float64Array;
  readonly slack: Float64Array;
  readonly price: Float64Array;
  /** 1/s and z/s. */
  readonly inverse: Float64Array;
  readonly weight: Float64Array;
  /** least + s − G·x, by row. */
  readonly short: Float64Array;
  /** cost − Gᵀ·z, by column. */
  readonly unpriced: Float64Array;
  /** The step that was found last. */
  readonly xStep: Float64Array;
  readonly slackStep: Float64Array;
  readonly priceStep: Float64Array;
  /** s·z that is wanted of it, over s, by row. */
  readonly aim: Float64Array;
  /** Σ s·z, and the largest `short`. */
  product = 0;
  mostShort = 0;
  /** 1 over how many times the step can be gone until the first slack is 0, and the first price. */
  slackFall = 0;
  priceFall = 0;
  /** Sums of the step: Σ δs·z and Σ δs·δz. */
  slackGain = 0;
  bothGain = 0;
  readonly #matrix: BandedMatrix;

  /** @param start x */
  constructor(rows: Inequalities, start: Float64Array) {
    const count = rows.least.length;
    this.rows = rows;
    this.x = start;
    this.slack = new Float64Array(count).fill(1);
    this.price = new Float64Array(count).fill(1);
    this.inverse = new Float64Array(count);
    this.weight = new Float64Array(count);
    this.short = new Float64Array(count);
    this.unpriced = new Float64Array(start.length);
    this.xStep = new Float64Array(start.length);
    this.slackStep = new Float64Array(count);
    this.priceStep = new Float64Array(count);
    this.aim = new Float64Array(count);
    this.#matrix = emptyNormalMatrix(rows);
    this.move(0, 0);
    takeRoom(this.slack, this.short);
    this.move(0, 0);
  }

  /**
   * Goes so much of the step and measures how far the place is off.
   * @param primal of x and slacks
   * @param dual of prices
   */
  move(primal: number, dual: number): void {
    addTimes(this.x, this.xStep, primal);
    this.unpriced.set(this.rows.cost);
    moveRows(this, primal, dual);
  }

  /** Prepares all steps from a place: one factorisation serves them. */
  prepare(): void {
    setNormalMatrix(this.#matrix, this.rows, this.weight);
    factorBanded(this.#matrix);
  }

  /**
   * Finds the step that takes to 0, to first order, what the place is off, and makes every s·z
   * `wanted`.
   * @param bend share of what the step before would add to s·z to second order that is taken off
   */
  findStep(wanted: number, bend: 0 | 1): void {
    setNegative(this.xStep, this.unpriced);
    aimRows(this, wanted, bend);
    solveFactored(this.#matrix, this.xStep);
    stepRows(this);
  }
}

/** Adds to slacks that are less than what their rows have. */
function takeRoom(slack: Float64Array, short: Float64Array): void {
  for (let row = 0; row < slack.length; row++) slack[row]! += Math.max(0, -short[row]!);
}

function setNegative(negative: Float64Array, of: Float64Array): void {
  for (let at = 0; at < negative.length; at++) negative[at] = -of[at]!;
}

function addTimes(row: Float64Array, way: Float64Array, share: number): void {
  for (let at = 0; at < row.length; at++) row[at]! += share * way[at]!;
}
