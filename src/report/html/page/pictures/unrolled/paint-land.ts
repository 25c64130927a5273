import { type Rgb, rgbText } from '../paint/ink.js';
import { COLUMNS, type LandGrid } from './land-grid.js';
import type { UnrolledLayout } from './unrolled-layout.js';

/** An overcut is at least so tall, CSS pixels: one turn of seven hundred would be overlooked. */
const OVERCUT_HEIGHT = 3;

/** Paints land as ink into the plot of a canvas; nothing where nothing is planned. */
export function paintLand(
  canvas: HTMLCanvasElement,
  grid: LandGrid,
  layout: UnrolledLayout,
  toneOf: (land: number) => Rgb,
): void {
  const { density } = layout;
  canvas.width = Math.round(layout.width * density);
  canvas.height = Math.round(layout.height * density);
  const pen = canvas.getContext('2d');
  const cells = cellImage(canvas.ownerDocument, grid, toneOf);
  if (pen === null || cells === null) return;
  const left = Math.round(layout.left * density);
  const top = Math.round(layout.top * density);
  const width = Math.round(layout.plotWidth * density);
  const height = Math.round(layout.plotHeight * density);
  pen.imageSmoothingEnabled = false;
  pen.drawImage(cells, left, top, width, height);
  strengthenOvercuts(pen, grid, layout, toneOf);
}

/** A pixel a cell. */
function cellImage(
  document: Document,
  { rows, least, bin }: LandGrid,
  toneOf: (land: number) => Rgb,
): HTMLCanvasElement | null {
  const canvas = document.createElement('canvas');
  canvas.width = COLUMNS;
  canvas.height = rows;
  const pen = canvas.getContext('2d');
  if (pen === null) return null;
  const image = pen.createImageData(COLUMNS, rows);
  const { data } = image;
  for (const [cell, land] of least.entries()) {
    if (bin[cell] === -1) continue;
    const [red, green, blue] = toneOf(land);
    data[4 * cell] = red;
    data[4 * cell + 1] = green;
    data[4 * cell + 2] = blue;
    data[4 * cell + 3] = 255;
  }
  pen.putImageData(image, 0, 0);
  return canvas;
}

function strengthenOvercuts(
  pen: CanvasRenderingContext2D,
  { rows, least }: LandGrid,
  { left, top, plotWidth, plotHeight, density }: UnrolledLayout,
  toneOf: (land: number) => Rgb,
): void {
  const rowHeight = plotHeight / rows;
  if (rowHeight >= OVERCUT_HEIGHT) return;
  const columnWidth = plotWidth / COLUMNS;
  for (const [cell, land] of least.entries()) {
    if (!(land < 0)) continue;
    pen.fillStyle = rgbText(toneOf(land));
    const x = left + (cell % COLUMNS) * columnWidth;
    const y = top + (Math.floor(cell / COLUMNS) + 0.5) * rowHeight - OVERCUT_HEIGHT / 2;
    pen.fillRect(x * density, y * density, columnWidth * density, OVERCUT_HEIGHT * density);
  }
}
