import { BINS_PER_QUARTER, type MotionSummary, QUARTERS_PER_TURN } from '../analysis/motion.js';
import type { Seconds } from '../units.js';
import { TIME_MATTERS } from './compare-margins.js';
import type { ComparedSide } from './compare-types.js';

/** The furthest shift that is tried: far over any change of a leader or a fade. */
const FURTHEST: Seconds = 30;
/**
 * How alike two programs have to be, as a correlation, to be the same music: measured on songs and
 * invented sides, different ones reach 0.54 at some lag, other equalising, compression or a shift of
 * the same one leaves 0.9.
 */
const LEAST_LIKENESS = 0.75;
/** By how much a longer shift has to be more alike than a shorter one: loops repeat themselves. */
const CLEARLY = 0.01;
/** Bins of a step of the first search: fewer lags, and still far shorter than a note. */
const COARSE_BINS = 4;
/** How far around the step that is found the shift is looked for again, steps. */
const AROUND = 2;
/** Spread under which a row counts as flat, re its mean: a steady tone has no place of its own. */
const FLAT = 0.01;

/** Lateral and vertical motion, step by step. */
type Rows = readonly Float64Array[];

/**
 * How much later the same music comes in the other file: the lag at which the two motions correlate
 * best within ±30 s, first by sixteenths of a turn, then around it by bins, and between these by a
 * parabola; by quarter turns where a summary is missing, which does for slow music only.
 * Correlation does not mind another level, and what differs in one passage or in length moves it
 * little.
 * @returns 0 for less than TIME_MATTERS, and where there is no more than a steady tone;
 *   null if the programs are alike at none of the lags
 */
export function programShift(before: ComparedSide, after: ComparedSide): Seconds | null {
  const [was, is] = [before.motion, after.motion];
  const byBins = was !== null && is !== null;
  const fine: Pair = byBins
    ? [binRows(was), binRows(is)]
    : [quarterRows(before), quarterRows(after)];
  const perQuarter = byBins ? BINS_PER_QUARTER : 1;
  const stepSeconds = 60 / before.settings.rpm / QUARTERS_PER_TURN / perQuarter;
  const factor = byBins ? COARSE_BINS : 1;
  const coarse: Pair = [coarser(fine[0], factor), coarser(fine[1], factor)];
  if (coarse.every((rows) => rows.every(isFlat))) return 0;

  const reach = Math.round(FURTHEST / stepSeconds / factor);
  const found = bestLag(coarse, lagsAround(0, reach), CLEARLY);
  if (found === null) return null;
  const lag = bestLag(fine, lagsAround(found * factor, AROUND * factor), 0);
  if (lag === null || likeness(fine, lag) < LEAST_LIKENESS) return null;
  const shift = (lag + vertex(fine, lag)) * stepSeconds;
  return Math.abs(shift) < TIME_MATTERS ? 0 : shift;
}

type Pair = readonly [before: Rows, after: Rows];

function binRows({ lateral, lift }: MotionSummary): Rows {
  return [lateral, lift];
}

function quarterRows({ forecast: { quarters } }: ComparedSide): Rows {
  return [quarters.lateral, quarters.lift];
}

/** Rows of the largest of every few steps. */
function coarser(rows: Rows, steps: number): Rows {
  return rows.map((row) =>
    Float64Array.from({ length: Math.floor(row.length / steps) }, (_, step) =>
      row.subarray(step * steps, (step + 1) * steps).reduce((most, value) => Math.max(most, value)),
    ),
  );
}

/** Lags from `middle − reach` to `middle + reach`, the shortest shift first. */
function lagsAround(middle: number, reach: number): number[] {
  const lags = Array.from({ length: 2 * reach + 1 }, (_, step) => middle - reach + step);
  return lags.sort((a, b) => Math.abs(a) - Math.abs(b));
}

/** The lag of the greatest likeness; of nearly equal ones the first. null if there is none. */
function bestLag(pair: Pair, lags: readonly number[], clearly: number): number | null {
  let best: number | null = null;
  let most = 0;
  for (const lag of lags) {
    const here = likeness(pair, lag);
    if (here <= most + (best === null ? 0 : clearly)) continue;
    best = lag;
    most = here;
  }
  return best;
}

/** Where the parabola through the likeness at a lag and beside it has its top, −½ … ½ of a step. */
function vertex(pair: Pair, lag: number): number {
  const [low, top, high] = [-1, 0, 1].map((step) => likeness(pair, lag + step));
  if (low === undefined || top === undefined || high === undefined) return 0;
  const curvature = low - 2 * top + high;
  return curvature < 0 ? Math.min(0.5, Math.max(-0.5, (low - high) / 2 / curvature)) : 0;
}

/**
 * Correlation of all rows at once, before[n] with after[n + lag], over what both have: Pearson's,
 * the covariances and variances of the rows added up. 0 where less than half of the shorter one is
 * in both, or one of them does not vary.
 */
function likeness([before, after]: Pair, lag: number): number {
  let [covariance, beforeVariance, afterVariance] = [0, 0, 0];
  for (const [row, was] of before.entries()) {
    const is = after[row]!;
    const from = Math.max(0, -lag);
    const until = Math.min(was.length, is.length - lag);
    const count = until - from;
    if (2 * count < Math.min(was.length, is.length)) return 0;
    let [sumWas, sumIs, wasSquares, isSquares, products] = [0, 0, 0, 0, 0];
    for (let step = from; step < until; step++) {
      const [one, other] = [was[step]!, is[step + lag]!];
      sumWas += one;
      sumIs += other;
      wasSquares += one * one;
      isSquares += other * other;
      products += one * other;
    }
    covariance += products - (sumWas * sumIs) / count;
    beforeVariance += wasSquares - (sumWas * sumWas) / count;
    afterVariance += isSquares - (sumIs * sumIs) / count;
  }
  const norm = Math.sqrt(beforeVariance * afterVariance);
  return norm > 0 ? covariance / norm : 0;
}

function isFlat(row: Float64Array): boolean {
  const mean = row.reduce((sum, value) => sum + value, 0) / row.length;
  const variance = row.reduce((sum, value) => sum + (value - mean) ** 2, 0) / row.length;
  return Math.sqrt(variance) <= FLAT * Math.abs(mean);
}
