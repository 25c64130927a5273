import { type Inequalities, inequalities, setRowsTimes } from './inequalities.js';
import type { LinearOptimum, LinearProgram } from './linear-program.js';
import { emptyPoint, NewtonStep, type Point } from './newton-step.js';

/** The gap to the dual at the end, of the value. */
const GAP = 1e-12;
/** The same where rounding lets it come no nearer: 0.1 nm of the radius of a side. */
const NEAR_GAP = 1e-9;
/** What a row may be short of at the end, in the program's own units. */
const SHORT = 1e-10;
/** What a column's cost may be off its rows' prices: near the end they are known no better. */
const UNPRICED = 1e-5;
/** Three times what any program tried has taken. */
const MOST_STEPS = 100;
/** How much of the way to the nearest bound a step goes. */
const STEP_SHARE = 0.9995;

/**
 * Solves a linear program whose rows touch neighbouring columns only, in time linear in their
 * number: an interior point method with predictor and corrector. Columns of a row ascend; every
 * column has finite bounds, and the program a solution. Rows are kept to 1e-10.
 * Source: Mehrotra 1992, as in Nocedal and Wright, Numerical Optimization, chapter 14 (from memory).
 * @throws RangeError where no optimum is found
 */
export function interiorPoint(program: LinearProgram): LinearOptimum {
  const rows = inequalities(program);
  const newton = new NewtonStep(rows);
  const [point, straight, curved] = [startOf(program, rows), emptyPoint(rows), emptyPoint(rows)];
  const wanted = new Float64Array(rows.least.length);
  let least = Number.POSITIVE_INFINITY;
  const nearest = emptyPoint(rows);
  for (let step = 0; step < MOST_STEPS; step++) {
    newton.measure(point);
    const gap = gapOf(rows, point, newton);
    // A long side that asks for all there is comes no nearer than rounding lets it, and then strays.
    if (gap >= least && least <= NEAR_GAP) break;
    if (gap < least) {
      keep(nearest, point);
      least = gap;
    }
    if (gap <= GAP) break;
    newton.prepare(point);
    newton.set(straight, point, wanted.fill(0));
    const mean = meanAfter(point, straight, 0);
    const centre = (meanAfter(point, straight, 1) / mean) ** 3 * mean;
    setCorrected(wanted, straight, centre);
    newton.set(curved, point, wanted);
    move(point, curved);
  }
  if (least > NEAR_GAP) throw new RangeError('no optimum of the linear program was found');
  return { x: nearest.x, duals: duals(program, rows, nearest.price) };
}

/** The middle of the bounds, at least 1 inside of every row. */
function startOf({ lower, upper }: LinearProgram, rows: Inequalities): Point {
  const point = emptyPoint(rows);
  const { x, slack, price } = point;
  const { least } = rows;
  for (let column = 0; column < x.length; column++)
    x[column] = (lower[column]! + upper[column]!) / 2;
  setRowsTimes(slack, rows, x);
  for (let row = 0; row < slack.length; row++) slack[row] = Math.max(slack[row]! - least[row]!, 1);
  price.fill(1);
  return point;
}

/** The gap to the dual, of the value; Infinity while rows or costs are off. */
function gapOf({ cost }: Inequalities, { x, slack, price }: Point, off: NewtonStep): number {
  const isMet = largest(off.short) <= SHORT && largest(off.unpriced) <= UNPRICED;
  return isMet ? dot(slack, price) / (1 + Math.abs(dot(cost, x))) : Number.POSITIVE_INFINITY;
}

function keep(kept: Point, { x, slack, price }: Point): void {
  kept.x.set(x);
  kept.slack.set(slack);
  kept.price.set(price);
}

/** The products s·z that are wanted of a step which is to come nearer to the middle. */
function setCorrected(wanted: Float64Array, { slack, price }: Point, centre: number): void {
  for (let row = 0; row < wanted.length; row++) wanted[row] = centre - slack[row]! * price[row]!;
}

/** Mean of s·z after `share` of a step, shortened so that nothing falls under 0. */
function meanAfter({ slack, price }: Point, by: Point, share: number): number {
  const primal = Math.min(share, longestStep(slack, by.slack));
  const dual = Math.min(share, longestStep(price, by.price));
  const { slack: slackWay, price: priceWay } = by;
  let sum = 0;
  for (let row = 0; row < slack.length; row++) {
    sum += (slack[row]! + primal * slackWay[row]!) * (price[row]! + dual * priceWay[row]!);
  }
  return sum / slack.length;
}

/** Goes a step, or so much of it that slacks and prices stay positive. */
function move({ x, slack, price }: Point, by: Point): void {
  const primal = Math.min(1, STEP_SHARE * longestStep(slack, by.slack));
  const dual = Math.min(1, STEP_SHARE * longestStep(price, by.price));
  addTimes(x, by.x, primal);
  addTimes(slack, by.slack, primal);
  addTimes(price, by.price, dual);
}

function addTimes(row: Float64Array, way: Float64Array, share: number): void {
  for (let at = 0; at < row.length; at++) row[at]! += share * way[at]!;
}

/** How many times `way` can be gone until the first of some positive numbers is 0. */
function longestStep(from: Float64Array, way: Float64Array): number {
  let longest = Number.POSITIVE_INFINITY;
  for (let row = 0; row < from.length; row++) {
    if (way[row]! < 0) longest = Math.min(longest, -from[row]! / way[row]!);
  }
  return longest;
}

/** Per row of the program, how much the optimum grows with its bound. */
function duals({ need }: LinearProgram, { needAt, mostAt }: Inequalities, price: Float64Array) {
  return need.map((_, row) => (price[needAt[row]!] ?? 0) - (price[mostAt[row]!] ?? 0));
}

function dot(one: Float64Array, other: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < one.length; at++) sum += one[at]! * other[at]!;
  return sum;
}

function largest(row: Float64Array): number {
  let most = 0;
  for (let at = 0; at < row.length; at++) most = Math.max(most, Math.abs(row[at]!));
  return most;
}
