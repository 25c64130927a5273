import { grooveSpeed } from '../../../../../model/disc.js';
import type { HotSpot } from '../../../../../model/forecast-types.js';
import { hotSpotText } from '../../../../hot-spot-text.js';
import { largeLengthText, lengthText } from '../../../../length-text.js';
import type { HotSpotEdges, PageSide } from '../../page-side.js';
import { isPrinting } from '../paint/printed.js';
import { html, svg } from '../paint/svg.js';
import { crossSection } from './cross-section.js';
import { type Field, fieldOf } from './field.js';
import { fieldView } from './field-view.js';
import { grooveEdges } from './groove-edges.js';
import { viewSizes } from './view-sizes.js';

/** One hot spot: the grooves to scale, cut across, and a longer stretch of them squeezed. */
export function hotSpotFigure(
  document: Document,
  page: PageSide,
  spot: HotSpot,
  rank: number,
  edges: HotSpotEdges | null,
  width: number,
): HTMLElement {
  const caption = html(
    document,
    'figcaption',
    {},
    html(document, 'b', { class: 'rank' }, String(rank + 1)),
    ` ${hotSpotText(spot, page.settings, page.units)}`,
  );
  const figure = html(document, 'figure', { class: 'hot-spot' }, caption);
  if (edges === null || edges.turns.length < 2) {
    figure.append(
      html(
        document,
        'p',
        { class: 'hint' },
        'The edges around this place are not kept: forecast the WAV file at this level to see them.',
      ),
    );
    return figure;
  }
  figure.append(...views(document, page, spot, rank, edges, width));
  return figure;
}

function views(
  document: Document,
  page: PageSide,
  spot: HotSpot,
  rank: number,
  edges: HotSpotEdges,
  width: number,
): Node[] {
  const { settings, units, motion } = page;
  const grooves = grooveEdges(page, edges);
  const metresPerSample =
    grooveSpeed(Math.max(spot.radius, 0), motion.turnSeconds) * edges.secondsPerSample;
  const sizes = viewSizes(width, isPrinting(document));
  const hatch = `overcut-hatch-${rank}`;
  const shared = { metresPerSample, landMin: settings.landMin, units, hatch };

  const all = fieldOf(grooves, Number.MAX_VALUE, metresPerSample);
  // The same radii in both views, so that one is found again in the other.
  const across = sizes.closeHeight / (all.outermost - all.innermost);
  const close = {
    ...fieldOf(grooves, sizes.closeWidth / across, metresPerSample),
    ...radiiOf(all),
  };
  const length = (all.lastSample - all.firstSample) * metresPerSample;
  const land = lengthText(spot.land, units);
  return [
    hatching(document, hatch),
    part(
      document,
      sizes.isStacked ? 'view wide' : 'view',
      'From above, to scale',
      fieldView(document, grooves, close, {
        ...shared,
        width: sizes.closeWidth,
        height: sizes.closeHeight,
        across,
        along: across,
        words: `Grooves from above at hot spot ${rank + 1}, to scale; land ${land}`,
      }),
    ),
    part(
      document,
      sizes.isStacked ? 'view wide' : 'view',
      `Cut across where they are nearest, with the ${lengthText(settings.playbackTip, units)} tip`,
      crossSection(document, grooves.grooves, grooves.tightest, {
        width: sizes.sectionWidth,
        settings,
        units,
        words: `The grooves of hot spot ${rank + 1} cut across, the playback tip seated in this turn`,
      }),
    ),
    part(
      document,
      'view wide',
      `${largeLengthText(length, units)} of it, squeezed along the cut`,
      fieldView(document, grooves, all, {
        ...shared,
        width: sizes.stripWidth,
        height: sizes.stripHeight,
        across: sizes.stripHeight / (all.outermost - all.innermost),
        along: sizes.stripWidth / Math.max(length, Number.MIN_VALUE),
        words: `A longer stretch of the grooves at hot spot ${rank + 1}, squeezed`,
      }),
    ),
  ];
}

function radiiOf({ innermost, outermost }: Field) {
  return { innermost, outermost };
}

function part(
  document: Document,
  name: string,
  title: string,
  picture: SVGSVGElement,
): HTMLElement {
  return html(
    document,
    'div',
    { class: name },
    html(document, 'p', { class: 'hint' }, title),
    picture,
  );
}

/**
 * Overlaps are hatched too, for eyes and printers that do not tell the ink; those that only the
 * tolerances make are hatched in the ink without being filled with it.
 */
function hatching(document: Document, id: string): SVGSVGElement {
  const hatched = (name: string, kind: string) => {
    const stripes = { class: `stripe ${kind}`, d: 'M-1 6L6 -1M3 9L9 3M-3 3L3 -3' };
    const pattern = { id: name, width: 6, height: 6, patternUnits: 'userSpaceOnUse' };
    return svg(document, 'pattern', pattern, svg(document, 'path', stripes));
  };
  return svg(
    document,
    'svg',
    { class: 'defs', width: 0, height: 0, 'aria-hidden': 'true' },
    svg(document, 'defs', {}, hatched(id, 'certain'), hatched(`${id}-possible`, 'possible')),
  );
}
