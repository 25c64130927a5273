import { notedPlace } from '../paint/noted-place.js';
import { svg } from '../paint/svg.js';
import type { LandGrid } from './land-grid.js';
import { pointOfBin, type UnrolledLayout } from './unrolled-layout.js';

/** A ring at the place with what is to be said of it, and hairs along its angle and its turn. */
export function unrolledCursor(
  document: Document,
  grid: LandGrid,
  layout: UnrolledLayout,
  bin: number,
  words: readonly string[],
): Node[] {
  const { left, top, plotWidth, plotHeight } = layout;
  const { x, y } = pointOfBin(layout, grid, bin);
  if (y < top || y > top + plotHeight) return [];
  return [
    svg(document, 'line', { x1: x, x2: x, y1: top, y2: top + plotHeight }),
    svg(document, 'line', { x1: left, x2: left + plotWidth, y1: y, y2: y }),
    svg(document, 'circle', { cx: x, cy: y, r: 7 }),
    notedPlace(document, { x, y }, layout, words),
  ];
}
