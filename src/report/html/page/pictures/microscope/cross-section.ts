import type { Settings } from '../../../../../settings.js';
import { lengthText, type Units } from '../../../../length-text.js';
import { coordinate, linePath } from '../paint/path-text.js';
import { svg } from '../paint/svg.js';
import { type Groove, landBetween } from './groove-edges.js';
import { grooveProfile } from './groove-profile.js';
import { scaleBar } from './scale-bar.js';
import { seatedTip } from './seated-tip.js';

export interface SectionPlace {
  readonly width: number;
  readonly settings: Settings;
  readonly units: Units;
  readonly words: string;
}

/** Room beside the outermost edges and under the deepest groove, m. */
const UNDER = 14e-6;
/** How much towards the centre is shown beside this turn, m. */
const INSIDE = 45e-6;
/** Width of a letter of a note, pixels. */
const LETTER = 7;
/** What the scale bar takes beside its length, and from below, pixels. */
const BAR_ROOM = 17;
const BAR_HEIGHT = 27;

/**
 * The grooves cut across at one angle, to scale, the edge of the disc to the right: lacquer shaded,
 * what two of them share in the warning ink, the playback tip where it comes to lie in this turn.
 */
export function crossSection(
  document: Document,
  grooves: readonly Groove[],
  sample: number,
  { width, settings, units, words }: SectionPlace,
): SVGSVGElement {
  const cuts = grooves.map((groove) => ({
    groove,
    inner: groove.inner[sample] ?? Number.NaN,
    outer: groove.outer[sample] ?? Number.NaN,
  }));
  const here = cuts.find(({ groove }) => groove.turnsFromSpot === 0);
  const innermost = Math.min(...cuts.map(({ inner }) => inner)) - UNDER;
  // The turn inside may be far away, and is seen from above.
  const left = here === undefined ? innermost : Math.max(innermost, here.inner - INSIDE);
  const right = Math.max(...cuts.map(({ outer }) => outer)) + UNDER;
  const deepest = Math.max(...cuts.map(({ inner, outer }) => (outer - inner) / 2));
  const over = Math.max(topOfTip(cuts, settings), UNDER / 2) + UNDER / 4;
  const scale = width / (right - left);
  const height = (over + deepest + UNDER) * scale;
  const at = ([x, z]: readonly [number, number]): [number, number] => [
    (x - left) * scale,
    (over - z) * scale,
  ];
  const profiles = cuts.map(({ inner, outer }) =>
    grooveProfile(inner, outer, settings.bottomRadius).map(at),
  );
  const surface = at([0, 0])[1];
  return svg(
    document,
    'svg',
    {
      viewBox: `0 0 ${width} ${coordinate(height)}`,
      width,
      height: coordinate(height),
      role: 'img',
      'aria-label': words,
    },
    svg(document, 'rect', { class: 'lacquer', x: 0, y: surface, width, height: height - surface }),
    ...profiles.map((points) => svg(document, 'path', { class: 'air', d: `${linePath(points)}Z` })),
    svg(document, 'line', { class: 'edge', x1: 0, x2: width, y1: surface, y2: surface }),
    ...profiles.map((points) => svg(document, 'path', { class: 'edge', d: linePath(points) })),
    ...cuts.slice(1).flatMap(({ groove }, before) => {
      const outside = cuts[before];
      return outside === undefined ? [] : shared(document, outside.groove, groove, sample, at);
    }),
    ...(here === undefined ? [] : tip(document, here.inner, here.outer, settings, at, scale)),
    ...landNotes(
      document,
      cuts.map(({ groove }) => groove),
      sample,
      at,
      units,
      { left: 0.22 * width + BAR_ROOM, top: height - BAR_HEIGHT },
    ),
    scaleBar(document, { x: 10, y: height - 8, scale, longest: 0.22 * width }, units),
  );
}

/** Height of the seated tip over the surface, m; 0 or less: it lies below. */
function topOfTip(
  cuts: readonly { readonly groove: Groove; readonly inner: number; readonly outer: number }[],
  { playbackTip }: Settings,
): number {
  const here = cuts.find(({ groove }) => groove.turnsFromSpot === 0);
  const seat = here === undefined ? null : seatedTip(here.outer - here.inner, playbackTip);
  return seat === null ? 0 : seat.centre + playbackTip;
}

/** Where two grooves overlap, the lacquer between them is gone down to |land|/2. */
function shared(
  document: Document,
  outside: Groove,
  inside: Groove,
  sample: number,
  at: (point: readonly [number, number]) => [number, number],
): Node[] {
  const land = landBetween(outside, inside, sample);
  if (!(land < 0)) return [];
  const from = outside.inner[sample] ?? 0;
  const to = inside.outer[sample] ?? 0;
  const corners = [at([from, 0]), at([(from + to) / 2, land / 2]), at([to, 0])];
  return [svg(document, 'path', { class: 'land overcut', d: `${linePath(corners)}Z` })];
}

function tip(
  document: Document,
  inner: number,
  outer: number,
  { playbackTip }: Settings,
  at: (point: readonly [number, number]) => [number, number],
  scale: number,
): Node[] {
  const seat = seatedTip(outer - inner, playbackTip);
  if (seat === null) return [];
  const middle = (inner + outer) / 2;
  const [cx, cy] = at([middle, seat.centre]);
  const touches = [-1, 1].map((wall) => {
    const [x, y] = at([middle + wall * seat.reach, -seat.contact]);
    return svg(document, 'circle', {
      class: 'contact',
      cx: coordinate(x),
      cy: coordinate(y),
      r: 2.5,
    });
  });
  const r = coordinate(playbackTip * scale);
  return [
    svg(document, 'circle', { class: 'tip', cx: coordinate(cx), cy: coordinate(cy), r }),
    ...touches,
  ];
}

/**
 * How much land, told in the lacquer under it, as deep as there is room between the walls.
 * @param free where notes may stand: right of, or over, the scale bar
 */
function landNotes(
  document: Document,
  grooves: readonly Groove[],
  sample: number,
  at: (point: readonly [number, number]) => [number, number],
  units: Units,
  free: { readonly left: number; readonly top: number },
): Node[] {
  return grooves.slice(1).flatMap((inside, before) => {
    const outside = grooves[before];
    if (outside === undefined) return [];
    const land = landBetween(outside, inside, sample);
    const from = outside.inner[sample] ?? 0;
    const to = inside.outer[sample] ?? 0;
    const text = lengthText(land, units);
    const half = (LETTER * text.length) / 2;
    const [x, surface] = at([(from + to) / 2, 0]);
    // The middle of the land inside may lie beyond what is shown.
    if (x < half) return [];
    const room = at([from, 0])[0] - at([to, 0])[0];
    // Walls at 45° give two pixels of room for each pixel of depth.
    const y = surface + Math.max(16, half - room / 2 + 14);
    if (x - half < free.left && y > free.top) return [];
    return [
      svg(document, 'line', { class: 'tick', x1: x, x2: x, y1: surface + 2, y2: y - 12 }),
      svg(
        document,
        'text',
        { class: land < 0 ? 'note overcut' : 'note', x, y, 'text-anchor': 'middle' },
        text,
      ),
    ];
  });
}
