import { element } from './controls/element.js';
import type { PageSide, Picture } from './page-side.js';
import { alongTheSide } from './pictures/along-the-side.js';
import { discFromAbove } from './pictures/disc-from-above.js';
import { sideUnrolled } from './pictures/side-unrolled.js';
import { underTheMicroscope } from './pictures/under-the-microscope.js';

/** All pictures, and the one place that they point at. */
export interface PictureBoard {
  update(side: PageSide): void;
  /** Points at a place until another is gone to, and brings the picture that leads into view. */
  go(atSeconds: number): void;
}

/** Puts the pictures where the page has their places. */
export function pictureBoard(): PictureBoard {
  let pinned: number | null = null;
  const show = (atSeconds: number | null) => {
    const place = atSeconds === null ? null : { atSeconds };
    for (const { picture } of pictures) picture.show(place);
  };
  const go = (atSeconds: number) => {
    pinned = atSeconds;
    show(atSeconds);
    reveal('unrolled');
  };
  const events = { hover: (at: number | null) => show(at ?? pinned), go };
  const pictures: readonly { readonly id: string; readonly picture: Picture }[] = [
    { id: 'unrolled', picture: sideUnrolled(document, events) },
    { id: 'from-above', picture: discFromAbove(document, events) },
    { id: 'along', picture: alongTheSide(document, events) },
    { id: 'microscope', picture: underTheMicroscope(document, events) },
  ];
  for (const { id, picture } of pictures) {
    (document.getElementById(id) ?? element('div')).append(picture.element);
  }
  return {
    update: (side) => {
      for (const { picture } of pictures) picture.update(side);
    },
    go,
  };
}

/** Scrolls only if the picture is not in view already; at once for who wants no motion. */
function reveal(id: string): void {
  const place = document.getElementById(id);
  if (place === null) return;
  const { top, bottom } = place.getBoundingClientRect();
  if (top >= 0 && bottom <= innerHeight) return;
  const isStill = matchMedia('(prefers-reduced-motion: reduce)').matches;
  place.scrollIntoView({ behavior: isStill ? 'auto' : 'smooth', block: 'start' });
}
