import { lengthText, type Units } from '../../../../length-text.js';
import { rgbText } from '../paint/ink.js';
import { svg } from '../paint/svg.js';
import type { LandTone } from './land-tone.js';

const WIDTH = 360;
const HEIGHT = 40;
const BAR = { left: 8, top: 4, width: 344, height: 12 };
const PIECES = 86;

/** What land each ink stands for, from an overcut as deep as landMin to plenty. */
export function toneLegend(document: Document, tone: LandTone, units: Units): SVGSVGElement {
  const [, least, unmodulated, plenty] = tone.named;
  // By places and not by lands: the lands that matter lie close together.
  const knots = [-least, 0, least, unmodulated, plenty];
  const landAt = (share: number) => {
    const place = Math.min(share * (knots.length - 1), knots.length - 1 - 1e-9);
    const knot = Math.floor(place);
    const [from = 0, to = 0] = knots.slice(knot, knot + 2);
    return from + (to - from) * (place - knot);
  };
  const pieces = Array.from({ length: PIECES }, (_, piece) =>
    svg(document, 'rect', {
      x: BAR.left + (piece / PIECES) * BAR.width,
      y: BAR.top,
      width: BAR.width / PIECES + 0.5,
      height: BAR.height,
      fill: rgbText(tone.toneOf(landAt((piece + 0.5) / PIECES))),
    }),
  );
  const names = [
    'overcut',
    '0',
    lengthText(least, units),
    lengthText(unmodulated, units),
    'plenty',
  ];
  const labels = names.map((name, knot) =>
    svg(
      document,
      'text',
      {
        class: 'label',
        x: BAR.left + (knot / (names.length - 1)) * BAR.width,
        y: BAR.top + BAR.height + 14,
        'text-anchor': knot === 0 ? 'start' : knot === names.length - 1 ? 'end' : 'middle',
      },
      name,
    ),
  );
  return svg(
    document,
    'svg',
    {
      class: 'tone-legend',
      viewBox: `0 0 ${WIDTH} ${HEIGHT}`,
      width: WIDTH,
      height: HEIGHT,
      role: 'img',
      'aria-label': `Ink by land: overcut under 0, little under ${lengthText(least, units)}, lighter the more there is`,
    },
    ...pieces,
    svg(document, 'rect', {
      class: 'frame',
      x: BAR.left,
      y: BAR.top,
      width: BAR.width,
      height: BAR.height,
    }),
    ...labels,
  );
}
