import { BINS_PER_QUARTER } from '../../../../../analysis/motion.js';
import { quartersIn } from '../../../../../model/nodes.js';
import type { PageSide } from '../../page-side.js';
import { coordinate } from '../paint/path-text.js';
import { svg } from '../paint/svg.js';
import { COLUMNS, type LandGrid } from './land-grid.js';
import type { UnrolledLayout } from './unrolled-layout.js';

/** Where each track begins: above what is cut after that angle, below what is cut before; its name. */
export function trackLines(
  document: Document,
  { side }: PageSide,
  grid: LandGrid,
  layout: UnrolledLayout,
): Node[] {
  const { left, top, plotWidth, plotHeight } = layout;
  const right = left + plotWidth;
  const rowHeight = plotHeight / grid.rows;
  return side.hand.tracks.flatMap(({ name, fromSeconds }) => {
    const bin = quartersIn(side, fromSeconds) * BINS_PER_QUARTER;
    const row = Math.floor(bin / COLUMNS / grid.turnsPerRow);
    if (row < 0 || row >= grid.rows) return [];
    const x = left + ((bin % COLUMNS) / COLUMNS) * plotWidth;
    const y = top + row * rowHeight;
    const d = `M${left} ${coordinate(y + rowHeight)}H${coordinate(x)}V${coordinate(y)}H${right}`;
    return [
      svg(document, 'path', { class: 'track-line', d }),
      svg(document, 'text', { class: 'track', x: left + 6, y: y + rowHeight + 13 }, name),
    ];
  });
}
