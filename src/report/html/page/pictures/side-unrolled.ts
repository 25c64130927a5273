import { BINS_PER_QUARTER } from '../../../../analysis/motion.js';
import { binLand } from '../../../../model/bin-land.js';
import { quartersIn } from '../../../../model/nodes.js';
import { binStart } from '../../../../model/planned-side.js';
import type { MakePicture, PageSide } from '../page-side.js';
import { readInk } from './paint/ink.js';
import { onNewLook } from './paint/on-new-look.js';
import { placeLines, quarterAt, wholeSpan } from './paint/place.js';
import { placeOfKey } from './paint/place-keys.js';
import { isPrinting } from './paint/printed.js';
import { html, setAttributes, svg } from './paint/svg.js';
import { hotSpotBadges } from './unrolled/hot-spot-badges.js';
import { type LandGrid, landGrid } from './unrolled/land-grid.js';
import { landTone } from './unrolled/land-tone.js';
import { paintLand } from './unrolled/paint-land.js';
import { toneLegend } from './unrolled/tone-legend.js';
import { trackLines } from './unrolled/track-lines.js';
import { unrolledCursor } from './unrolled/unrolled-cursor.js';
import { unrolledLabels } from './unrolled/unrolled-labels.js';
import {
  aimedHeight,
  binAtPoint,
  mostRows,
  type UnrolledLayout,
  unrolledLayout,
} from './unrolled/unrolled-layout.js';

/** What is shown at this moment. */
interface Shown {
  readonly page: PageSide;
  readonly land: Float64Array;
  readonly grid: LandGrid;
  readonly layout: UnrolledLayout;
}

/** On paper there are more dots than on a screen. */
const PRINT_DENSITY = 3;

/**
 * The side as if the spiral were cut along a radius and laid flat: across, the angle; down, turn
 * after turn; ink by the land that is left. Grooves that run parallel, beats, drum hits that come
 * to lie beside one another and the one tight spot are seen as patterns.
 */
export const sideUnrolled: MakePicture = (document, events) => {
  const canvas = html(document, 'canvas', { 'aria-hidden': 'true' });
  const labels = svg(document, 'g');
  const cursor = svg(document, 'g', { class: 'cursor' });
  const overlay = svg(document, 'svg', { 'aria-hidden': 'true' }, labels, cursor);
  const surface = html(
    document,
    'div',
    { class: 'surface', tabindex: 0, role: 'slider', 'aria-label': 'Place on the side unrolled' },
    canvas,
    overlay,
  );
  const legend = html(document, 'div', { class: 'legend' });
  const element = html(document, 'div', { class: 'picture side-unrolled' }, surface, legend);

  let page: PageSide | null = null;
  let shown: Shown | null = null;
  let cursorAt: number | null = null;

  const draw = () => {
    const width = look.width();
    if (page === null || width === 0) return;
    const isOnPaper = isPrinting(document);
    const density = isOnPaper ? PRINT_DENSITY : devicePixelRatio;
    const aimed = aimedHeight(width, isOnPaper) * density;
    const land = binLand(page.side, page.executed.plan);
    const grid = landGrid(land, mostRows(aimed));
    const layout = unrolledLayout(width, grid.rows, density, aimed);
    const tone = landTone(readInk(document), page.settings);
    shown = { page, land, grid, layout };
    paintLand(canvas, grid, layout, tone.toneOf);
    setAttributes(overlay, { viewBox: `0 0 ${layout.width} ${layout.height}` });
    labels.replaceChildren(
      ...unrolledLabels(document, page, grid, layout),
      ...trackLines(document, page, grid, layout),
      ...hotSpotBadges(document, page, grid, layout),
    );
    legend.replaceChildren(toneLegend(document, tone, page.units));
    showCursor();
  };

  /** @param bin the one meant, where the time alone would be a whole quarter turn */
  const showCursor = (bin: number | null = null) => {
    if (shown === null) return;
    const { land, grid, layout } = shown;
    const { from, until } = wholeSpan(shown.page);
    const at = cursorAt ?? 0;
    const atBin = bin ?? Math.floor(quartersIn(shown.page.side, at) * BINS_PER_QUARTER + 1e-6);
    const left = land[atBin] ?? shown.page.executed.land[quarterAt(shown.page, at)] ?? Number.NaN;
    const lines = placeLines(shown.page, at, left);
    setAttributes(surface, {
      'aria-valuemin': from.toFixed(3),
      'aria-valuemax': until.toFixed(3),
      'aria-valuenow': at.toFixed(3),
      'aria-valuetext': lines.join(' · '),
    });
    cursor.replaceChildren(
      ...(cursorAt === null ? [] : unrolledCursor(document, grid, layout, atBin, lines)),
    );
  };

  const binUnder = (event: MouseEvent): number | null => {
    if (shown === null) return null;
    const { left, top, width } = surface.getBoundingClientRect();
    const scale = shown.layout.width / width;
    const point = { x: (event.clientX - left) * scale, y: (event.clientY - top) * scale };
    return binAtPoint(shown.layout, shown.grid, point);
  };
  const timeUnder = (event: MouseEvent): number | null => {
    const bin = binUnder(event);
    return bin === null || shown === null ? null : binStart(shown.page.side, bin);
  };

  surface.addEventListener('pointermove', (event) => events.hover(timeUnder(event)));
  surface.addEventListener('pointerleave', () => events.hover(null));
  surface.addEventListener('click', (event) => {
    const at = timeUnder(event);
    if (at !== null) events.go(at);
  });
  surface.addEventListener('keydown', (event) => {
    if (page === null || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Enter' && cursorAt !== null) events.go(cursorAt);
    const at = placeOfKey(page, event.key, cursorAt ?? 0);
    if (at === null) return;
    event.preventDefault();
    events.hover(at);
  });

  const look = onNewLook(surface, draw);

  return {
    element,
    update(side) {
      page = side;
      draw();
    },
    show(place) {
      cursorAt = place?.atSeconds ?? null;
      showCursor();
    },
  };
};
