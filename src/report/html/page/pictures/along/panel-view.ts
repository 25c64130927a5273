import type { PageSide } from '../../page-side.js';
import { html, svg } from '../paint/svg.js';
import { type ColumnExtremes, columnExtremes, heldValue } from './column-extremes.js';
import { betweenPath, envelopePath } from './column-paths.js';
import type { Panel, PanelLine } from './panel.js';
import { type PlotFrame, panelAxis, panelHeight, panelTitle } from './panel-axis.js';
import { trackHairs } from './track-marks.js';
import type { Span } from './view-span.js';

/**
 * A line of least or largest values is drawn in stretches of so many pixels, each the extreme of all
 * that lies in it: in single pixels it would be a comb from edge to edge.
 */
const STRETCH = 3;
/** Room above and below the plot for half a letter of its ticks. */
const EDGE = 6;

export interface PanelView {
  readonly element: HTMLElement;
  /** Values at the cursor; null: no cursor. */
  readonly showValues: (at: number | null) => void;
  /** Where the cursor and a selection are drawn. */
  readonly over: SVGGElement;
  readonly height: number;
}

export function panelView(
  document: Document,
  panel: Panel,
  view: Span,
  frame: PlotFrame,
  page: PageSide,
): PanelView {
  const { units } = page;
  const height = panelHeight(panel, frame);
  const total = height + 2 * EDGE;
  const [low, high] = panel.domain;
  const yOf = (value: number) => {
    const share = Math.min(Math.max((value - low) / (high - low), 0), 1);
    return EDGE + height * (1 - share);
  };
  const extremes = panel.lines.map((line) => shownExtremes(line, view, frame));
  const over = svg(document, 'g', { class: 'cursor' });
  const plot = svg(
    document,
    'svg',
    { viewBox: `0 0 ${frame.width} ${total}`, 'aria-hidden': 'true' },
    ...panelAxis(document, panel, frame, yOf, units),
    ...trackHairs(document, page, view, frame, total),
    ...areas(document, panel, extremes, frame, yOf),
    ...limitLines(document, panel, frame, yOf),
    // What is cut lies over what would be.
    ...panel.lines
      .map((line, at) => {
        const shown = extremes[at];
        const d = shown === undefined ? '' : envelopePath(shown, frame.left, yOf);
        const kind = isJudged(panel, at) ? 'judged' : 'other';
        return svg(document, 'path', { class: `line ${line.ink} ${kind}`, d });
      })
      .reverse(),
    ...limitNames(document, panel, frame, yOf),
    over,
  );
  const values = panel.lines.map(() => html(document, 'b', { class: 'value' }));
  const keys = panel.lines.map((line, at) =>
    html(
      document,
      'span',
      {
        class: `key ${line.ink} ${isJudged(panel, at) ? 'judged' : 'other'} ${keyKind(panel, line)}`,
      },
      line.name,
      ' ',
      values[at] ?? '',
    ),
  );
  const head = html(document, 'p', { class: 'head' }, panelTitle(panel, units), ' ', ...keys);
  return {
    element: html(document, 'div', { class: `panel ${panel.id}` }, head, plot),
    over,
    height: total,
    showValues(at) {
      for (const [which, line] of panel.lines.entries()) {
        const value = at === null ? Number.NaN : heldValue(line.told ?? line.row, at);
        const shown = values[which];
        if (shown !== undefined) {
          shown.textContent = Number.isFinite(value) ? panel.valueText(value) : '';
        }
      }
    },
  };
}

function shownExtremes({ row, shows }: PanelLine, view: Span, frame: PlotFrame): ColumnExtremes {
  const columns = Math.floor(frame.plotWidth);
  if (shows === 'both') return columnExtremes(row, view, columns);
  const { least, most } = columnExtremes(row, view, Math.ceil(columns / STRETCH));
  const side = shows === 'least' ? least : most;
  const spread = Float64Array.from({ length: columns }, (_, column) => {
    return side[Math.floor((column / columns) * side.length)] ?? Number.NaN;
  });
  return { least: spread, most: spread };
}

/** The shade that says what is wrong: between land and its limits, or between two widths. */
function areas(
  document: Document,
  panel: Panel,
  extremes: readonly ColumnExtremes[],
  { left }: PlotFrame,
  yOf: (value: number) => number,
): Node[] {
  const area = (kind: string, low: Float64Array, high: Float64Array) =>
    svg(document, 'path', { class: `area ${kind}`, d: betweenPath(low, high, left, yOf) });
  const [first, second] = extremes;
  if (panel.id === 'width' && first !== undefined && second !== undefined) {
    return [area('between', first.least, second.most)];
  }
  const judged = extremes[panel.judged];
  if (panel.id !== 'land' || judged === undefined) return [];
  const [kept, none] = panel.limits.map(({ value }) => value);
  if (kept === undefined || none === undefined) return [];
  const { least } = judged;
  return [
    area(
      'low',
      least.map((land) => Math.max(land, none)),
      new Float64Array(least.length).fill(kept),
    ),
    area('overcut', least, new Float64Array(least.length).fill(none)),
  ];
}

/** Of two plans one is what will be cut; whatever is not of a plan is as good. */
function isJudged({ lines, judged }: Panel, at: number): boolean {
  return at === judged || lines[at]?.ink === lines[judged]?.ink;
}

/** Two lines that are drawn alike are told apart by their values alone. */
function keyKind({ lines }: Panel, { name, ink }: PanelLine): string {
  if (name === '') return 'unnamed';
  return lines.filter((line) => line.ink === ink).length > 1 ? 'alike' : '';
}

function limitLines(
  document: Document,
  { limits, domain: [low, high] }: Panel,
  { left, plotWidth }: PlotFrame,
  yOf: (value: number) => number,
): Node[] {
  return limits.flatMap(({ value }) => {
    if (value < low || value > high) return [];
    const y = yOf(value);
    return [
      svg(document, 'line', { class: 'limit', x1: left, x2: left + plotWidth, y1: y, y2: y }),
    ];
  });
}

/** Over the lines, or a busy one would hide them; side by side, as limits may lie close together. */
function limitNames(
  document: Document,
  { limits, domain: [low, high] }: Panel,
  { left, plotWidth }: PlotFrame,
  yOf: (value: number) => number,
): Node[] {
  return limits.flatMap(({ name, value }, at) => {
    if (name === '' || value < low || value > high) return [];
    const x = left + plotWidth - 4 - 56 * at;
    const place = { class: 'limit-name', x, y: yOf(value) - 3, 'text-anchor': 'end' };
    return [svg(document, 'text', place, name)];
  });
}
