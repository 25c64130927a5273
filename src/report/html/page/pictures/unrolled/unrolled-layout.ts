import { COLUMNS, type LandGrid } from './land-grid.js';

/** Where the side unrolled lies in its picture, CSS pixels. */
export interface UnrolledLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly top: number;
  readonly plotWidth: number;
  readonly plotHeight: number;
  /** Device pixels in a CSS pixel. */
  readonly density: number;
}

/** Room for times and diameters beside the plot; a phone has less. */
const NARROW = 600;
const TOP = 22;
const BOTTOM = 6;
/** A side of one turn is no taller than this per turn. */
const TALLEST_ROW = 22;

/** What the picture's height aims at, CSS pixels. */
export function aimedHeight(width: number, isOnPaper: boolean): number {
  if (isOnPaper) return 330;
  return width < NARROW ? 440 : 600;
}

/**
 * Rows beyond which turns share one, so that a picture does not outgrow a screen.
 * @param aimed height, device pixels
 */
export function mostRows(aimed: number): number {
  return Math.round(1.4 * aimed);
}

/**
 * Every row has the same whole number of device pixels: were some turns a pixel taller than others,
 * that would show as beats that the groove does not have.
 */
export function unrolledLayout(
  width: number,
  rows: number,
  density: number,
  aimed: number,
): UnrolledLayout {
  const beside = width < NARROW ? 56 : 66;
  const rowPixels = Math.max(1, Math.round(Math.min(aimed / rows, TALLEST_ROW * density)));
  const plotHeight = (rows * rowPixels) / density;
  return {
    width,
    height: TOP + plotHeight + BOTTOM,
    left: beside,
    top: TOP,
    plotWidth: Math.max(1, width - 2 * beside),
    plotHeight,
    density,
  };
}

/** Middle of the cell that a bin is in. */
export function pointOfBin(layout: UnrolledLayout, grid: LandGrid, bin: number) {
  const row = Math.floor(bin / COLUMNS / grid.turnsPerRow);
  return {
    x: layout.left + (((bin % COLUMNS) + 0.5) / COLUMNS) * layout.plotWidth,
    y: layout.top + ((row + 0.5) / grid.rows) * layout.plotHeight,
  };
}

/** The bin with the least land in the cell at a point; null outside of what is planned. */
export function binAtPoint(
  layout: UnrolledLayout,
  grid: LandGrid,
  point: { readonly x: number; readonly y: number },
): number | null {
  const column = Math.floor(((point.x - layout.left) / layout.plotWidth) * COLUMNS);
  const row = Math.floor(((point.y - layout.top) / layout.plotHeight) * grid.rows);
  if (column < 0 || column >= COLUMNS || row < 0 || row >= grid.rows) return null;
  const bin = grid.bin[row * COLUMNS + column];
  return bin === undefined || bin < 0 ? null : bin;
}
