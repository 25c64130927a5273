import type { Units } from '../../../../length-text.js';
import { linePath } from '../paint/path-text.js';
import { type Point, simplified } from '../paint/simplified.js';
import { svg } from '../paint/svg.js';
import type { Field } from './field.js';
import type { Grooves } from './groove-edges.js';
import { type LandScale, landAreas, possibleOverlaps, TOLERANCE } from './land-areas.js';
import { scaleBar } from './scale-bar.js';

export interface FieldPlace {
  readonly width: number;
  readonly height: number;
  /** Pixels a metre across the grooves. */
  readonly across: number;
  /** Pixels a metre along them; the same in a view to scale. */
  readonly along: number;
  readonly metresPerSample: number;
  readonly landMin: number;
  readonly units: Units;
  /** Name of the pattern that overlaps are hatched with. */
  readonly hatch: string;
  readonly words: string;
}

/**
 * Grooves from above, the edge of the disc upwards, the cut from left to right: walls and the line
 * of the bottom, land shaded by how much there is, overlaps in the warning ink over all of it.
 */
export function fieldView(
  document: Document,
  grooves: Grooves,
  field: Field,
  place: FieldPlace,
): SVGSVGElement {
  const { width, height, across, along, metresPerSample, units } = place;
  const xOf = (sample: number) => width / 2 + (sample - grooves.tightest) * metresPerSample * along;
  const yOf = (radial: number) => (field.outermost - radial) * across;
  const edge = (row: Float64Array): Point[] => {
    const points: Point[] = [];
    for (const [at, radial] of row.subarray(field.firstSample, field.lastSample + 1).entries()) {
      points.push([xOf(field.firstSample + at), yOf(radial)]);
    }
    return simplified(points, TOLERANCE);
  };
  const drawn = grooves.grooves.map((groove) => ({
    groove,
    inner: edge(groove.inner),
    outer: edge(groove.outer),
    bottom: edge(groove.inner.map((inner, at) => (inner + (groove.outer[at] ?? inner)) / 2)),
  }));
  const scale = { field, landMin: place.landMin, hatch: place.hatch, xOf, yOf };
  const lands = grooves.grooves.slice(1).flatMap((inside, before) => {
    const outside = grooves.grooves[before];
    return outside === undefined ? [] : landAreas(document, outside.inner, inside.outer, scale);
  });
  const x = xOf(grooves.tightest);
  const bar = { x: 12, y: height - 12, scale: along, longest: 0.3 * width };
  return svg(
    document,
    'svg',
    { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-label': place.words },
    ...lands.filter(({ isOver }) => !isOver).map(({ area }) => area),
    ...drawn.flatMap(({ groove, inner, outer, bottom }) => [
      svg(document, 'path', {
        class: groove.turnsFromSpot === 0 ? 'groove here' : 'groove',
        d: `${linePath(outer)}${linePath(inner.toReversed()).replace('M', 'L')}Z`,
      }),
      svg(document, 'path', { class: 'bottom', d: linePath(bottom) }),
      svg(document, 'path', { class: 'edge', d: linePath(outer) }),
      svg(document, 'path', { class: 'edge', d: linePath(inner) }),
    ]),
    ...lands.filter(({ isOver }) => isOver).map(({ area }) => area),
    ...tolerated(document, grooves, scale, edge),
    svg(document, 'line', { class: 'section', x1: x, x2: x, y1: 0, y2: height }),
    scaleBar(document, bar, units),
    ...(along === across
      ? []
      : [
          scaleBar(
            document,
            { x: 12, y: 10, scale: across, longest: 0.4 * height, isUpright: true },
            units,
          ),
        ]),
  );
}

/** As near as the tolerances let the turn outside come, and what would overlap then. */
function tolerated(
  document: Document,
  { grooves, tolerated }: Grooves,
  scale: LandScale,
  edge: (row: Float64Array) => Point[],
): Node[] {
  const here = grooves.find(({ turnsFromSpot }) => turnsFromSpot === 0);
  if (tolerated === null || here === undefined) return [];
  return [
    ...possibleOverlaps(document, tolerated, here.outer, scale),
    svg(document, 'path', { class: 'tolerated', d: linePath(edge(tolerated)) }),
  ];
}
