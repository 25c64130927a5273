import type { Span } from './view-span.js';

/** Values at an even pace, each held until the next. */
export interface Row {
  readonly values: Float64Array;
  /** Time at which the first begins, seconds. */
  readonly from: number;
  /** How long each is held. */
  readonly step: number;
}

/** Least and largest value of each pixel column; NaN where the row has none. */
export interface ColumnExtremes {
  readonly least: Float64Array;
  readonly most: Float64Array;
}

/**
 * What a row shows at a scale: of all values that a column touches the least and the largest, so
 * that no peak is averaged away however far the view is zoomed out. NaN in a row is no value.
 */
export function columnExtremes(row: Row, view: Span, columns: number): ColumnExtremes {
  const least = new Float64Array(columns).fill(Number.NaN);
  const most = new Float64Array(columns).fill(Number.NaN);
  const { values, from, step } = row;
  const perColumn = (view.until - view.from) / columns / step;
  const first = (view.from - from) / step;
  for (let column = 0; column < columns; column++) {
    const begins = first + column * perColumn;
    const start = Math.max(0, Math.floor(begins + 1e-9));
    // A column that ends where a value begins does not touch it.
    const end = Math.min(values.length, Math.max(start + 1, Math.ceil(begins + perColumn - 1e-9)));
    if (begins + perColumn <= 0) continue;
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (let at = start; at < end; at++) {
      const value = values[at] ?? Number.NaN;
      if (value < low) low = value;
      if (value > high) high = value;
    }
    if (low > high) continue;
    least[column] = low;
    most[column] = high;
  }
  return { least, most };
}

/** The value that is held at a time; NaN outside of the row. */
export function heldValue({ values, from, step }: Row, at: number): number {
  return values[Math.floor((at - from) / step + 1e-9)] ?? Number.NaN;
}
