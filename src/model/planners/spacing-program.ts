import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../../analysis/motion.js';
import type { LinearProgram } from '../linear/linear-program.js';
import type { PlannedSide } from '../planned-side.js';
import { windowMinimum } from './window-maximum.js';

/** What a quarter of the program costs more than a silent one: it decides among equal sums only. */
const TIE_BREAK = 1e-4;

/** A need of four times the advance at a share of a quarter: (quarter, share) → 4·A ≥ need. */
interface Row {
  readonly quarter: number;
  readonly share: number;
  readonly need: number;
}

/**
 * The program whose solution is the tightest pitch, per planned quarter, in units of the profile's
 * base pitch: least Σp, base ≤ p ≤ pitchMax, the slews, and A(t′) ≥ need at the bins' boundaries.
 * A at a share s of quarter j is ((1 − s)·p[j − 4] + p[j − 3] + p[j − 2] + p[j − 1] + s·p[j])/4.
 * Among equal sums the one with the least inside the program.
 * @param needs A that is needed at each boundary of a bin, m; see boundary-needs.ts
 */
export function spacingProgram(side: PlannedSide, needs: Float64Array): LinearProgram {
  const { count, lead, programCount, settings } = side;
  const { basePitch, pitchMax, pitchOpenSlew, pitchCloseSlew } = settings;
  const rows = bindingRows(needs, side.basePitch);
  const widest = side.basePitch.reduce((most, base) => Math.max(most, base), pitchMax);
  const slews = count - 1;
  const rowCount = rows.length + slews;
  const need = new Float64Array(rowCount).fill(-pitchCloseSlew / basePitch);
  const most = new Float64Array(rowCount).fill(pitchOpenSlew / basePitch);
  const starts = new Int32Array(rowCount + 1);
  const columns: number[] = [];
  const values: number[] = [];
  for (const [at, row] of rows.entries()) {
    need[at] = row.need / basePitch;
    most[at] = Number.POSITIVE_INFINITY;
    for (let back = QUARTERS_PER_TURN; back >= 0; back--) {
      const weight = back === QUARTERS_PER_TURN ? 1 - row.share : back === 0 ? row.share : 1;
      if (weight === 0) continue;
      columns.push(row.quarter - back);
      values.push(weight);
    }
    starts[at + 1] = columns.length;
  }
  for (let quarter = 0; quarter < slews; quarter++) {
    columns.push(quarter, quarter + 1);
    values.push(-1, 1);
    starts[rows.length + quarter + 1] = columns.length;
  }
  return {
    cost: new Float64Array(count).fill(1).fill(1 + TIE_BREAK, lead, lead + programCount),
    lower: side.basePitch.map((least) => least / basePitch),
    upper: new Float64Array(count).fill(widest / basePitch),
    need,
    most,
    starts,
    columns: Int32Array.from(columns),
    values: Float64Array.from(values),
  };
}

/**
 * The needs that can bind, from the second planned turn on. What base pitch meets drops out. A is
 * linear inside a quarter, so it meets the needs of a quarter's boundaries if it meets those on
 * their upper hull. A quarter's last boundary is the next one's first.
 */
function bindingRows(needs: Float64Array, basePitch: Float64Array): readonly Row[] {
  const rows: Row[] = [];
  const count = basePitch.length;
  for (let quarter = QUARTERS_PER_TURN; quarter < count; quarter++) {
    // All five that may be part of the advance hold at least this.
    const met = windowMinimum(basePitch, quarter - QUARTERS_PER_TURN, quarter);
    const from = quarter * BINS_PER_QUARTER;
    for (const bin of upperHull(needs, from, from + BINS_PER_QUARTER)) {
      const isNextOnes = bin === from + BINS_PER_QUARTER && quarter + 1 < count;
      if (isNextOnes || needs[bin]! <= met) continue;
      const share = (bin - from) / BINS_PER_QUARTER;
      rows.push({ quarter, share, need: QUARTERS_PER_TURN * needs[bin]! });
    }
  }
  return rows;
}

/**
 * Places of the upper hull of a row, `first` and `last` among them.
 * Source: Andrew's monotone chain, 1979 (from memory).
 */
function upperHull(row: Float64Array, first: number, last: number): number[] {
  const hull: number[] = [];
  for (let at = first; at <= last; at++) {
    while (hull.length > 1 && isUnder(row, hull.at(-1)!, hull.at(-2)!, at)) hull.pop();
    hull.push(at);
  }
  return hull;
}

/** Whether `between` lies on or under the line from `before` to `after`. */
function isUnder(row: Float64Array, between: number, before: number, after: number): boolean {
  const rise = (row[after]! - row[before]!) * (between - before);
  return (row[between]! - row[before]!) * (after - before) <= rise;
}
