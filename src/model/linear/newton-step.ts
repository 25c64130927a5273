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
    setRowsTimes(this.short, this.#rows, x);
    setShort(this.short, this.#rows.least, slack);
    this.unpriced.set(this.#rows.cost);
    setNegative(this.#pull, price);
    addColumnsTimes(this.unpriced, this.#rows, this.#pull);
  }

  /** Prepares all steps from the point that was measured last: one factorisation serves them. */
  prepare({ slack, price }: Point): void {
    setQuotients(this.#pull, price, slack);
    setNormalMatrix(this.#matrix, this.#rows, this.#pull);
    factorBanded(this.#matrix);
  }

  /**
   * Sets `step` to the one that takes to 0, to first order, what the point is off.
   * @param wanted s·z, by row
   */
  set(step: Point, point: Point, wanted: Float64Array): void {
    setMissing(this.#change, wanted, point);
    setPull(this.#pull, this.#change, this.short, point);
    setNegative(step.x, this.unpriced);
    addColumnsTimes(step.x, this.#rows, this.#pull);
    solveFactored(this.#matrix, step.x);
    setRowsTimes(step.slack, this.#rows, step.x);
    subtract(step.slack, this.short);
    setPriceStep(step.price, this.#change, step.slack, point);
  }
}

// A loop a function: of several in one, the later ones throw away what was compiled for the first.

/** least + s − G·x. @param short G·x before */
function setShort(short: Float64Array, least: Float64Array, slack: Float64Array): void {
  for (let row = 0; row < short.length; row++) short[row] = least[row]! + slack[row]! - short[row]!;
}

/** What is wanted of s·z beyond what there is. */
function setMissing(change: Float64Array, wanted: Float64Array, { slack, price }: Point): void {
  for (let row = 0; row < change.length; row++) {
    change[row] = wanted[row]! - price[row]! * slack[row]!;
  }
}

function setPull(
  pull: Float64Array,
  change: Float64Array,
  short: Float64Array,
  { slack, price }: Point,
): void {
  for (let row = 0; row < pull.length; row++) {
    pull[row] = (change[row]! + price[row]! * short[row]!) / slack[row]!;
  }
}

function setPriceStep(
  priceStep: Float64Array,
  change: Float64Array,
  slackStep: Float64Array,
  { slack, price }: Point,
): void {
  for (let row = 0; row < priceStep.length; row++) {
    priceStep[row] = (change[row]! - price[row]! * slackStep[row]!) / slack[row]!;
  }
}

function setNegative(negative: Float64Array, of: Float64Array): void {
  for (let at = 0; at < negative.length; at++) negative[at] = -of[at]!;
}

function setQuotients(quotients: Float64Array, of: Float64Array, by: Float64Array): void {
  for (let at = 0; at < quotients.length; at++) quotients[at] = of[at]! / by[at]!;
}

function subtract(from: Float64Array, what: Float64Array): void {
  for (let at = 0; at < from.length; at++) from[at]! -= what[at]!;
}
