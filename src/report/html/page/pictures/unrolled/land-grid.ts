import { BINS_PER_QUARTER, QUARTERS_PER_TURN } from '../../../../../analysis/motion.js';

/** Columns of the side unrolled: bins a turn. */
export const COLUMNS = BINS_PER_QUARTER * QUARTERS_PER_TURN;

/** Land by turn and angle. */
export interface LandGrid {
  /** Rows of the picture; each stands for `turnsPerRow` turns, the last one perhaps for fewer. */
  readonly rows: number;
  readonly turnsPerRow: number;
  /** rows × COLUMNS, the least land of the cell's bins, m. */
  readonly least: Float64Array;
  /** Which bin that is, of the planned quarters. */
  readonly bin: Int32Array;
}

/**
 * Puts land turn under turn; where there are more turns than rows, the least of several at the same
 * angle stands for them, so that no tight spot is lost to scale.
 * @param land of each bin, from a whole turn on, m
 * @param mostRows at least 1
 */
export function landGrid(land: Float64Array, mostRows: number): LandGrid {
  const turns = Math.ceil(land.length / COLUMNS);
  const turnsPerRow = Math.max(1, Math.ceil(turns / mostRows));
  const rows = Math.ceil(turns / turnsPerRow);
  const least = new Float64Array(rows * COLUMNS).fill(Number.POSITIVE_INFINITY);
  const bin = new Int32Array(rows * COLUMNS).fill(-1);
  for (const [at, value] of land.entries()) {
    const cell = Math.floor(at / COLUMNS / turnsPerRow) * COLUMNS + (at % COLUMNS);
    const before = least[cell];
    if (before === undefined || value >= before) continue;
    least[cell] = value;
    bin[cell] = at;
  }
  return { rows, turnsPerRow, least, bin };
}
