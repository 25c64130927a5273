import type { MakePicture, PageSide } from '../page-side.js';
import { discFigure } from './disc/disc-figure.js';
import { diameterAt } from './paint/place.js';
import { html, svg } from './paint/svg.js';

/** The disc to scale: where the program lies, how wide, and what is left to the limits. */
export const discFromAbove: MakePicture = (document) => {
  const element = html(document, 'div', { class: 'picture disc-from-above' });
  const cursor = svg(document, 'g', { class: 'cursor' });
  let page: PageSide | null = null;
  let millimetres = 1;
  return {
    element,
    update(side) {
      page = side;
      const figure = discFigure(document, side);
      millimetres = figure.perMetre;
      figure.picture.append(cursor);
      element.replaceChildren(figure.picture, figure.caption);
    },
    show(place) {
      if (page === null || place === null) {
        cursor.replaceChildren();
        return;
      }
      const radius = (diameterAt(page, place.atSeconds) / 2) * millimetres;
      cursor.replaceChildren(svg(document, 'circle', { r: Math.max(0, radius).toFixed(2) }));
    },
  };
};
