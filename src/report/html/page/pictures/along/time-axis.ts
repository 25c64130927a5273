import { diameterText } from '../../../../length-text.js';
import { timeText } from '../../../../place-text.js';
import type { PageSide } from '../../page-side.js';
import { diameterAt } from '../paint/place.js';
import { svg } from '../paint/svg.js';
import { timeTicks } from '../paint/ticks.js';
import type { PlotFrame } from './panel-axis.js';
import type { Span } from './view-span.js';

export const AXIS_HEIGHT = 38;
const TICK_ROOM = 84;

/** Round times with the diameter that is reached there. */
export function timeAxis(document: Document, page: PageSide, view: Span, frame: PlotFrame): Node[] {
  const { left, plotWidth } = frame;
  const xOf = (at: number) => left + ((at - view.from) / (view.until - view.from)) * plotWidth;
  return [
    svg(document, 'line', { class: 'tick', x1: left, x2: left + plotWidth, y1: 0.5, y2: 0.5 }),
    ...timeTicks(view.from, view.until, plotWidth / TICK_ROOM).flatMap((at) => {
      const x = xOf(at);
      const label = { class: 'label', x, 'text-anchor': 'middle' };
      return [
        svg(document, 'line', { class: 'tick', x1: x, x2: x, y1: 0, y2: 5 }),
        svg(document, 'text', { ...label, y: 17 }, timeText(at)),
        svg(document, 'text', { ...label, y: 31 }, diameterText(diameterAt(page, at), page.units)),
      ];
    }),
  ];
}
