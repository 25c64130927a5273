import { BINS_PER_QUARTER } from '../../../../../analysis/motion.js';
import { quartersIn } from '../../../../../model/nodes.js';
import type { Metres } from '../../../../../units.js';
import { diameterText, type Units } from '../../../../length-text.js';
import { timeText } from '../../../../place-text.js';
import type { PageSide } from '../../page-side.js';
import { diameterAt, wholeSpan } from '../paint/place.js';
import { svg } from '../paint/svg.js';
import { timeTicks } from '../paint/ticks.js';
import { COLUMNS, type LandGrid } from './land-grid.js';
import { pointOfBin, type UnrolledLayout } from './unrolled-layout.js';

/** CSS pixels between two times. */
const TIME_ROOM = 44;

/** Angles above, times to the left, diameters to the right, and a hair at each quarter turn. */
export function unrolledLabels(
  document: Document,
  page: PageSide,
  grid: LandGrid,
  layout: UnrolledLayout,
): Node[] {
  return [
    ...columnHeads(document, page, layout),
    ...angleLabels(document, layout),
    ...placeLabels(document, page, grid, layout),
    svg(document, 'rect', {
      class: 'frame',
      x: layout.left,
      y: layout.top,
      width: layout.plotWidth,
      height: layout.plotHeight,
    }),
  ];
}

function columnHeads(document: Document, { units }: PageSide, layout: UnrolledLayout): Node[] {
  const { left, top, plotWidth, width } = layout;
  const right = left + plotWidth;
  const inUnit = units === 'us' ? 'in' : 'mm';
  // 360° stands over the edge of the plot.
  const diameter = width - right > 60 ? `⌀ ${inUnit}` : inUnit;
  return [
    svg(
      document,
      'text',
      { class: 'label', x: left - 14, y: top - 7, 'text-anchor': 'end' },
      'time',
    ),
    svg(document, 'text', { class: 'label', x: right + 16, y: top - 7 }, diameter),
  ];
}

function angleLabels(document: Document, layout: UnrolledLayout): Node[] {
  const { left, top, plotWidth, plotHeight } = layout;
  return [0, 90, 180, 270, 360].flatMap((degrees) => {
    const x = left + (degrees / 360) * plotWidth;
    const label = svg(
      document,
      'text',
      { class: 'label', x, y: top - 7, 'text-anchor': 'middle' },
      `${degrees}°`,
    );
    const hair = { class: 'hair', x1: x, x2: x, y1: top - 4, y2: top + plotHeight };
    return [label, svg(document, 'line', hair)];
  });
}

function placeLabels(
  document: Document,
  page: PageSide,
  grid: LandGrid,
  layout: UnrolledLayout,
): Node[] {
  const { from, until } = wholeSpan(page);
  const times = timeTicks(from, until, layout.plotHeight / TIME_ROOM);
  const right = layout.left + layout.plotWidth;
  return times.flatMap((at) => {
    const bin = Math.floor(quartersIn(page.side, at) * BINS_PER_QUARTER + 1e-6);
    if (bin < 0 || bin >= Math.ceil(page.side.count * BINS_PER_QUARTER)) return [];
    const { y } = pointOfBin(layout, grid, bin - (bin % COLUMNS));
    const place = { class: 'label', y: y + 4 };
    const diameter = diameterFigure(diameterAt(page, at), page.units);
    return [
      svg(document, 'line', { class: 'tick', x1: layout.left - 4, x2: layout.left, y1: y, y2: y }),
      svg(document, 'line', { class: 'tick', x1: right, x2: right + 4, y1: y, y2: y }),
      svg(
        document,
        'text',
        { ...place, x: layout.left - 7, 'text-anchor': 'end' },
        timeText(at).replace(/\.0$/, ''),
      ),
      svg(document, 'text', { ...place, x: right + 7 }, diameter),
    ];
  });
}

/** The column's head has the unit; past the centre there is no diameter, nor room to say so. */
function diameterFigure(diameter: Metres, units: Units): string {
  return diameter > 0 ? diameterText(diameter, units).replace(/ (mm|in)$/, '') : '–';
}
