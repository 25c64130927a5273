import type { MakePicture, PageSide } from '../page-side.js';
import { type AlongView, alongView, drawOver } from './along/along-view.js';
import { onDrag } from './along/drag.js';
import type { Panel } from './along/panel.js';
import { panelsOf } from './along/panels.js';
import { following, panned, type Span, zoomedAround, zoomedTo } from './along/view-span.js';
import { onNewLook } from './paint/on-new-look.js';
import { landAt, placeWords, quarterAt, wholeSpan } from './paint/place.js';
import { placeOfKey } from './paint/place-keys.js';
import { html, setAttributes } from './paint/svg.js';

/** Quarter turns that the closest view shows. */
const CLOSEST = 4;
const ZOOM_STEP = 2;

/**
 * Pitch, land, width, depth, bends, slope and low band on one time axis, with findings and hot
 * spots as marks. Dragging zooms, Shift and dragging, the axis or the overview pan, a double click or Escape shows
 * the whole side again.
 */
export const alongTheSide: MakePicture = (document, events) => {
  const surface = html(document, 'div', {
    class: 'surface',
    tabindex: 0,
    role: 'slider',
    'aria-label': 'Place along the side',
  });
  const below = html(document, 'div', { class: 'below' });
  const button = (name: string, act: () => void) => {
    const made = html(document, 'button', { type: 'button' }, name);
    made.addEventListener('click', act);
    return made;
  };
  const readout = html(document, 'p', { class: 'readout' });
  const bar = html(
    document,
    'div',
    { class: 'bar' },
    button('Closer', () => zoomBy(1 / ZOOM_STEP)),
    button('Wider', () => zoomBy(ZOOM_STEP)),
    button('Whole side', () => setView(null)),
    readout,
  );
  const hint = html(
    document,
    'p',
    { class: 'hint keys' },
    'Drag to zoom, Shift-drag or drag the strip below to move, double-click or Esc for the whole ' +
      'side. Keys: arrows by quarter turn and turn, + and −, N and P to the next and previous finding.',
  );
  const element = html(
    document,
    'div',
    { class: 'picture along-the-side' },
    bar,
    surface,
    below,
    hint,
  );

  let page: PageSide | null = null;
  let panels: readonly Panel[] = [];
  /** null: all of it, whatever its length after the next change. */
  let zoomed: Span | null = null;
  let shown: AlongView | null = null;
  let cursorAt: number | null = null;
  let selection: readonly [number, number] | null = null;

  const draw = () => {
    const width = look.width();
    if (page === null || width === 0) return;
    const whole = wholeSpan(page);
    const view = zoomed === null ? whole : panned(whole, zoomed, 0);
    shown = alongView(document, page, panels, view, width, (at) => events.go(at));
    surface.replaceChildren(shown.marks, ...shown.panels.map((panel) => panel.element), shown.axis);
    below.replaceChildren(shown.overview);
    showCursor();
  };

  const showCursor = () => {
    if (page === null || shown === null) return;
    drawOver(document, shown, cursorAt, selection);
    const { from, until } = wholeSpan(page);
    const at = cursorAt ?? 0;
    const land = landAt(page, at);
    const words = `${placeWords(page, at, land)} at least in this quarter turn`;
    setAttributes(surface, {
      'aria-valuemin': from.toFixed(3),
      'aria-valuemax': until.toFixed(3),
      'aria-valuenow': at.toFixed(3),
      'aria-valuetext': words,
    });
    readout.textContent = cursorAt === null ? '' : words;
  };

  const least = () => (page === null ? 0 : CLOSEST * page.side.quarterSeconds);
  const setView = (span: Span | null) => {
    if (page === null) return;
    const whole = wholeSpan(page);
    const isWhole = span === null || span.until - span.from >= whole.until - whole.from - 1e-9;
    zoomed = isWhole ? null : span;
    draw();
  };
  const zoomBy = (factor: number) => {
    if (page === null || shown === null) return;
    const { from, until } = shown.view;
    const isInside = cursorAt !== null && cursorAt > from && cursorAt < until;
    const at = isInside ? cursorAt : (from + until) / 2;
    setView(zoomedAround(wholeSpan(page), shown.view, at ?? from, factor, least()));
  };
  const timeAt = (x: number): number => {
    if (shown === null) return 0;
    const { frame, view } = shown;
    const share = Math.min(Math.max((x - frame.left) / frame.plotWidth, 0), 1);
    return view.from + share * (view.until - view.from);
  };

  let panFrom: Span | null = null;
  onDrag(surface, {
    hovered: (x) => events.hover(x === null ? null : placed(timeAt(x))),
    clicked: (x) => events.go(placed(timeAt(x))),
    moved(from, to, isPan) {
      if (page === null || shown === null) return;
      if (!isPan) {
        selection = [from, to];
        showCursor();
        return;
      }
      panFrom ??= shown.view;
      const perPixel = (panFrom.until - panFrom.from) / shown.frame.plotWidth;
      setView(panned(wholeSpan(page), panFrom, (from - to) * perPixel));
    },
    ended(from, to, isPan) {
      selection = null;
      panFrom = null;
      if (page === null || isPan) return;
      setView(zoomedTo(wholeSpan(page), timeAt(from), timeAt(to), least()));
    },
    cancelled() {
      selection = null;
      panFrom = null;
      showCursor();
    },
  });
  const centreOn = (x: number) => {
    if (page === null || shown === null || zoomed === null) return;
    const whole = wholeSpan(page);
    const share = (x - shown.frame.left) / shown.frame.plotWidth;
    const at = whole.from + share * (whole.until - whole.from);
    setView(panned(whole, zoomed, at - (zoomed.from + zoomed.until) / 2));
  };
  onDrag(below, {
    hovered: () => {},
    clicked: centreOn,
    moved: (_, to) => centreOn(to),
    ended: (_, to) => centreOn(to),
    cancelled: () => {},
  });
  /** The start of the quarter turn, so that other pictures show the same one. */
  const placed = (at: number): number => {
    if (page === null) return at;
    const { from } = wholeSpan(page);
    return from + quarterAt(page, at) * page.side.quarterSeconds;
  };

  surface.addEventListener('dblclick', () => setView(null));
  surface.addEventListener(
    'wheel',
    (event) => {
      if (page === null || shown === null) return;
      const isSideways = Math.abs(event.deltaX) > Math.abs(event.deltaY);
      // An upright wheel alone scrolls the page, as everywhere on it.
      if (!isSideways && !event.ctrlKey) return;
      event.preventDefault();
      const { view, frame } = shown;
      const perPixel = (view.until - view.from) / frame.plotWidth;
      if (isSideways) setView(panned(wholeSpan(page), view, event.deltaX * perPixel));
      else zoomBy(1.002 ** event.deltaY);
    },
    { passive: false },
  );
  surface.addEventListener('keydown', (event) => {
    if (page === null || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.key === 'Escape') setView(null);
    else if (event.key === '+') zoomBy(1 / ZOOM_STEP);
    else if (event.key === '-') zoomBy(ZOOM_STEP);
    else if (event.key === 'Enter' && cursorAt !== null) events.go(cursorAt);
    else {
      const at = placeOfKey(page, event.key, cursorAt ?? 0);
      if (at === null) return;
      events.hover(at);
    }
    event.preventDefault();
  });

  const look = onNewLook(element, draw);

  return {
    element,
    update(side) {
      page = side;
      panels = panelsOf(side);
      draw();
    },
    show(place) {
      cursorAt = place?.atSeconds ?? null;
      if (page !== null && cursorAt !== null && zoomed !== null) {
        const followed = following(wholeSpan(page), zoomed, cursorAt);
        if (followed !== zoomed) setView(followed);
      }
      showCursor();
    },
  };
};
