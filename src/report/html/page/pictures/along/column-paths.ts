import { coordinate } from '../paint/path-text.js';
import type { ColumnExtremes } from './column-extremes.js';

/**
 * A line through the columns, each a pixel wide: up and down over what the column holds, level to
 * the next. Columns without a value break it.
 * @param yOf of a value, pixels
 */
export function envelopePath(
  { least, most }: ColumnExtremes,
  left: number,
  yOf: (value: number) => number,
): string {
  let path = '';
  let y: string | null = null;
  for (const [column, low] of least.entries()) {
    const high = most[column] ?? Number.NaN;
    if (Number.isNaN(low) || Number.isNaN(high)) {
      y = null;
      continue;
    }
    const [yLow, yHigh] = [coordinate(yOf(low)), coordinate(yOf(high))];
    if (y === null) path += `M${coordinate(left + column)} ${yHigh}`;
    if (y !== yHigh && y !== null) path += `V${yHigh}`;
    if (yLow !== yHigh) path += `V${yLow}`;
    path += `h1`;
    y = yLow;
  }
  return path;
}

/** The area between two lines, column by column. */
export function betweenPath(
  low: Float64Array,
  high: Float64Array,
  left: number,
  yOf: (value: number) => number,
): string {
  let path = '';
  for (const [column, bottom] of low.entries()) {
    const top = high[column] ?? Number.NaN;
    if (!(top > bottom)) continue;
    const [yTop, yBottom] = [yOf(top), yOf(bottom)];
    const height = coordinate(yBottom - yTop);
    path += `M${coordinate(left + column)} ${coordinate(yTop)}h1v${height}h-1z`;
  }
  return path;
}
