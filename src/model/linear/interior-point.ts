import { type Inequalities, inequalities } from './inequalities.js';
import type { LinearOptimum, LinearProgram } from './linear-program.js';
import { Search } from './search.js';

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
 * column has a finite least, and the program a solution of finite cost. Rows are kept to 1e-10.
 * Source: Mehrotra 1992, as in Nocedal and Wright, Numerical Optimization, chapter 14 (from memory).
 * @throws RangeError where no optimum is found
 */
export function interiorPoint(program: LinearProgram): LinearOptimum {
  const rows = inequalities(program);
  const search = new Search(rows, startOf(program));
  const nearest = {
    x: new Float64Array(search.x.length),
    price: new Float64Array(rows.least.length),
  };
  let least = Number.POSITIVE_INFINITY;
  for (let step = 0; step < MOST_STEPS; step++) {
    const gap = gapOf(search);
    // A long side that asks for all there is comes no nearer than rounding lets it, and then strays.
    if (gap >= least && least <= NEAR_GAP) break;
    if (gap < least) {
      nearest.x.set(search.x);
      nearest.price.set(search.price);
      least = gap;
    }
    if (gap <= GAP) break;
    search.prepare();
    search.findStep(0, 0);
    search.findStep(centreAfter(search), 1);
    search.move(shareOf(search.slackFall), shareOf(search.priceFall));
  }
  if (least > NEAR_GAP) throw new RangeError('no optimum of the linear program was found');
  return { x: nearest.x, duals: duals(program, rows, nearest.price) };
}

/** The middle of the bounds, or 1 over the least where nothing bounds from above. */
function startOf({ lower, upper }: LinearProgram): Float64Array {
  return lower.map((least, column) =>
    upper[column]! < Number.POSITIVE_INFINITY ? (least + upper[column]!) / 2 : least + 1,
  );
}

/** The gap to the dual, of the value; Infinity while rows or costs are off. */
function gapOf({ rows, x, product, mostShort, unpriced }: Search): number {
  const isMet = mostShort <= SHORT && largest(unpriced) <= UNPRICED;
  return isMet ? product / (1 + Math.abs(dot(rows.cost, x))) : Number.POSITIVE_INFINITY;
}

/** The s·z to go for, the less the more the straight step, gone as far as it can be, leaves of it. */
function centreAfter({
  product,
  slackFall,
  priceFall,
  slackGain,
  bothGain,
  slack,
}: Search): number {
  const primal = Math.min(1, 1 / slackFall);
  const dual = Math.min(1, 1 / priceFall);
  // With s·δz + z·δs = −s·z.
  const priceGain = -product - slackGain;
  const after = product + primal * slackGain + dual * priceGain + primal * dual * bothGain;
  return ((after / product) ** 3 * product) / slack.length;
}

/** How much of a step is gone, so that slacks or prices stay positive. */
function shareOf(fall: number): number {
  return Math.min(1, STEP_SHARE / fall);
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
