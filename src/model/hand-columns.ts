import type { Metres, Seconds } from '../units.js';

/** How far a time may lie from the boundary of a quarter and yet be on it, quarters. */
const ON_GRID = 1e-9;

/** A value that holds from a time on. */
export interface Step {
  readonly fromSeconds: Seconds;
  readonly value: Metres;
}

/** Where the planned quarters lie in the program. */
export interface QuarterGrid {
  /** Index of the quarter that begins with the program. */
  readonly lead: number;
  readonly count: number;
  readonly quarterSeconds: Seconds;
}

/**
 * What is set by hand from a time on, per planned quarter: the largest of the values that hold in
 * it, so that a step up comes no later and a step down no sooner than asked for. What holds at the
 * first sample also holds for the silent turns before it, since there it can be dialled in.
 * @param steps ascending in time
 * @param before until the first step
 */
export function handColumn(
  { lead, count, quarterSeconds }: QuarterGrid,
  steps: readonly Step[],
  before: Metres,
): Float64Array {
  const column = new Float64Array(count).fill(before);
  for (const { fromSeconds, value } of steps) {
    const from = fromSeconds / quarterSeconds;
    if (from <= ON_GRID) {
      column.fill(value);
      continue;
    }
    const first = lead + Math.floor(from + ON_GRID);
    // The quarter in which the step lies has both values.
    const isInside = from - Math.floor(from + ON_GRID) > ON_GRID;
    const shared = column[first] ?? value;
    column.fill(value, first);
    if (isInside && first < count) column[first] = Math.max(shared, value);
  }
  return column;
}
