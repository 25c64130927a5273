import type { PageSide } from '../../page-side.js';
import { isPrinting } from '../paint/printed.js';
import { html, svg } from '../paint/svg.js';
import { OVERVIEW_HEIGHT, overview } from './overview.js';
import type { Panel } from './panel.js';
import type { PlotFrame } from './panel-axis.js';
import { type PanelView, panelView } from './panel-view.js';
import { MARKS_HEIGHT, placeMarks } from './place-marks.js';
import { AXIS_HEIGHT, timeAxis } from './time-axis.js';
import { trackMarks, trackRoom } from './track-marks.js';
import type { Span } from './view-span.js';

const NARROW = 600;
/** A side is to take two pages. */
const PAPER_TALLNESS = 0.55;

export interface AlongView {
  readonly frame: PlotFrame;
  readonly view: Span;
  readonly panels: readonly PanelView[];
  readonly marks: Element;
  readonly axis: Element;
  readonly overview: Element;
}

/** Marks, panels, time axis and overview of a stretch of the side. */
export function alongView(
  document: Document,
  page: PageSide,
  panels: readonly Panel[],
  view: Span,
  width: number,
  go: (atSeconds: number) => void,
): AlongView {
  const left = width < NARROW ? 34 : 44;
  const tallness = isPrinting(document) ? PAPER_TALLNESS : 1;
  const frame = { width, tallness, left, plotWidth: Math.max(1, Math.floor(width - 2 * left)) };
  const strip = (name: string, height: number, content: readonly Node[]) =>
    svg(
      document,
      'svg',
      { class: name, viewBox: `0 0 ${width} ${height}`, 'aria-hidden': 'true' },
      ...content,
    );
  return {
    frame,
    view,
    panels: panels.map((panel) => panelView(document, panel, view, frame, page)),
    marks: strip('marks', trackRoom(page) + MARKS_HEIGHT, [
      ...trackMarks(document, page, view, frame),
      ...placeMarks(document, page, view, frame, go),
    ]),
    axis: strip('time-axis', AXIS_HEIGHT, timeAxis(document, page, view, frame)),
    overview: html(
      document,
      'div',
      { class: 'overview' },
      strip('', OVERVIEW_HEIGHT, overview(document, page, view, frame)),
    ),
  };
}

/** Hair at the cursor and shade over what is being selected, in every panel. */
export function drawOver(
  document: Document,
  { panels, frame, view }: AlongView,
  cursorAt: number | null,
  selection: readonly [number, number] | null,
): void {
  const xOf = (at: number) =>
    frame.left + ((at - view.from) / (view.until - view.from)) * frame.plotWidth;
  const isShown = cursorAt !== null && cursorAt >= view.from && cursorAt <= view.until;
  for (const { over, height, showValues } of panels) {
    const hair = isShown
      ? [svg(document, 'line', { x1: xOf(cursorAt), x2: xOf(cursorAt), y1: 0, y2: height })]
      : [];
    const [one, other] = selection ?? [0, 0];
    const shade =
      selection === null
        ? []
        : [
            svg(document, 'rect', {
              class: 'selection',
              x: Math.min(one, other),
              y: 0,
              width: Math.abs(other - one),
              height,
            }),
          ];
    over.replaceChildren(...shade, ...hair);
    showValues(isShown ? cursorAt : null);
  }
}
