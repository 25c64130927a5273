import type { MakePicture, PageSide } from '../page-side.js';
import { hotSpotFigure } from './microscope/hot-spot-figure.js';
import { onNewLook } from './paint/on-new-look.js';
import { html } from './paint/svg.js';

const HINT =
  'This turn is the more shaded one; the edge of the disc is up, and to the right where the grooves are ' +
  'cut across. Dotted: how near the turn outside comes when the lathe is as far off as the ' +
  'tolerances admit; hatched: what then overlaps. Filled: what overlaps on a perfect lathe too.';

/** The cursor is at a hot spot: the cursor's steps are quarter turns. */
const NEAR_QUARTERS = 1;

/** What a microscope will show at each of the places with the least land. */
export const underTheMicroscope: MakePicture = (document, events) => {
  const element = html(document, 'div', { class: 'picture under-the-microscope' });
  let page: PageSide | null = null;
  let figures: readonly { readonly figure: HTMLElement; readonly atSeconds: number }[] = [];

  const draw = () => {
    const width = look.width();
    if (page === null || width === 0) return;
    const { forecast, microscope } = page;
    const side = page;
    figures = forecast.hotSpots.map((spot, rank) => {
      const edges = microscope[rank] ?? null;
      const figure = hotSpotFigure(document, side, spot, rank, edges, width);
      const rankButton = html(document, 'button', { type: 'button' }, 'Show in the other pictures');
      rankButton.addEventListener('click', () => events.go(spot.atSeconds));
      figure.querySelector('figcaption')?.append(' ', rankButton);
      return { figure, atSeconds: spot.atSeconds };
    });
    element.replaceChildren(
      ...(figures.length > 0
        ? [html(document, 'p', { class: 'hint' }, HINT), ...figures.map(({ figure }) => figure)]
        : [
            html(
              document,
              'p',
              { class: 'hint' },
              'No place has less land than an unmodulated groove.',
            ),
          ]),
    );
  };

  const look = onNewLook(element, draw);

  return {
    element,
    update(side) {
      page = side;
      draw();
    },
    show(place) {
      const near = NEAR_QUARTERS * (page?.side.quarterSeconds ?? 0);
      for (const { figure, atSeconds } of figures) {
        const isNear = place !== null && Math.abs(place.atSeconds - atSeconds) < near;
        figure.classList.toggle('near', isNear);
      }
    },
  };
};
