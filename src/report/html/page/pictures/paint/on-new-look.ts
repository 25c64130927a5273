import { drawnWidth } from './printed.js';

/** Whether a picture can be drawn, and how wide. */
export interface Look {
  /** CSS pixels; 0 while the element is not shown. */
  width(): number;
}

/**
 * Calls `draw` whenever a picture would look different though the side is the same: another width,
 * another scheme of colours, another density of the screen, or the page on its way to the printer.
 * The width is what was measured last, since to ask for it anew between two drawings would lay out
 * the whole page each time.
 */
export function onNewLook(element: HTMLElement, draw: () => void): Look {
  const page = element.ownerDocument;
  let width = 0;
  const redraw = () => {
    width = element.clientWidth;
    if (width > 0) draw();
  };
  new ResizeObserver(() => {
    // Drawing changes the height, which is no reason to draw again.
    if (element.clientWidth !== width) redraw();
  }).observe(element);
  // The page marks its root when it prints, and may give the reader a choice of scheme there.
  new MutationObserver(redraw).observe(page.documentElement, { attributes: true });
  matchMedia('(prefers-color-scheme: dark)').addEventListener('change', redraw);
  onNewDensity(redraw);
  return {
    width() {
      if (width === 0) width = element.clientWidth;
      return drawnWidth(page, width);
    },
  };
}

/** A query holds for one density, so each change asks anew. */
function onNewDensity(redraw: () => void): void {
  matchMedia(`(resolution: ${devicePixelRatio}dppx)`).addEventListener(
    'change',
    () => {
      redraw();
      onNewDensity(redraw);
    },
    { once: true },
  );
}
