import type { PageSide } from '../../page-side.js';
import { wholeSpan } from '../paint/place.js';
import { svg } from '../paint/svg.js';
import { columnExtremes } from './column-extremes.js';
import { envelopePath } from './column-paths.js';
import type { PlotFrame } from './panel-axis.js';
import type { Span } from './view-span.js';

export const OVERVIEW_HEIGHT = 30;

/** The whole side's pitch, small, and in it the stretch that is shown above. */
export function overview(document: Document, page: PageSide, view: Span, frame: PlotFrame): Node[] {
  const { side, executed, settings } = page;
  const { left, plotWidth } = frame;
  const whole = wholeSpan(page);
  const xOf = (at: number) => left + ((at - whole.from) / (whole.until - whole.from)) * plotWidth;
  const row = { values: executed.plan.pitch, from: whole.from, step: side.quarterSeconds };
  const extremes = columnExtremes(row, whole, Math.floor(plotWidth));
  const widest = Math.max(...extremes.most.filter(Number.isFinite), 1.2 * settings.basePitch);
  const floor = 0.8 * settings.basePitch;
  const yOf = (pitch: number) => 26 - (22 * (pitch - floor)) / (widest - floor);
  const x = xOf(view.from);
  return [
    svg(document, 'rect', { class: 'bed', x: left, y: 1, width: plotWidth, height: 28 }),
    svg(document, 'path', {
      class: `line ${settings.executes}`,
      d: envelopePath(extremes, left, yOf),
    }),
    svg(document, 'rect', {
      class: 'window',
      x,
      y: 1,
      width: Math.max(3, xOf(view.until) - x),
      height: 28,
    }),
  ];
}
