import { linePath } from '../paint/path-text.js';
import { type Point, simplified } from '../paint/simplified.js';
import { svg } from '../paint/svg.js';
import type { Field } from './field.js';

/** How far a line may be off, pixels: less than is seen. */
export const TOLERANCE = 0.15;

/** Where samples and radii lie in a view, and what land is little. */
export interface LandScale {
  readonly field: Field;
  readonly landMin: number;
  /** Name of the pattern that overlaps are hatched with. */
  readonly hatch: string;
  readonly xOf: (sample: number) => number;
  readonly yOf: (radial: number) => number;
}

type LandKind = 'good' | 'low' | 'overcut';

/** A shape, and whether it is to lie over the grooves. */
interface LandArea {
  readonly area: Node;
  readonly isOver: boolean;
}

interface Stretch {
  readonly kind: LandKind;
  readonly path: string;
}

/**
 * Land from an inner edge in to the outer edge of the next turn, in stretches of one kind each.
 * Overlaps are to be drawn over the grooves, the rest under them.
 */
export function landAreas(
  document: Document,
  upper: Float64Array,
  lower: Float64Array,
  scale: LandScale,
): LandArea[] {
  return stretches(upper, lower, scale).flatMap(({ kind, path }): LandArea[] => {
    const isOver = kind === 'overcut';
    const area = svg(document, 'path', { class: `land ${kind}`, d: path });
    if (!isOver) return [{ area, isOver }];
    const hatched = { class: 'hatched', d: path, fill: `url(#${scale.hatch})` };
    return [
      { area, isOver },
      { area: svg(document, 'path', hatched), isOver },
    ];
  });
}

/** Where a tolerated edge reaches over the next turn. */
export function possibleOverlaps(
  document: Document,
  tolerated: Float64Array,
  lower: Float64Array,
  scale: LandScale,
): Node[] {
  return stretches(tolerated, lower, scale).flatMap(({ kind, path }) => {
    if (kind !== 'overcut') return [];
    const fill = `url(#${scale.hatch}-possible)`;
    return [svg(document, 'path', { class: 'land possible', d: path, fill })];
  });
}

function stretches(
  upper: Float64Array,
  lower: Float64Array,
  { field, landMin, xOf, yOf }: LandScale,
): Stretch[] {
  const found: Stretch[] = [];
  let kind: LandKind | null = null;
  let above: Point[] = [];
  let below: Point[] = [];
  const close = () => {
    if (kind === null || above.length < 2) return;
    const back = linePath(simplified(below, TOLERANCE).toReversed()).replace('M', 'L');
    found.push({ kind, path: `${linePath(simplified(above, TOLERANCE))}${back}Z` });
  };
  for (let sample = field.firstSample; sample <= field.lastSample; sample++) {
    const from = upper[sample] ?? Number.NaN;
    const to = lower[sample] ?? Number.NaN;
    const x = xOf(sample);
    above.push([x, yOf(from)]);
    below.push([x, yOf(to)]);
    const is = landKind(from - to, landMin);
    if (is === kind) continue;
    // A stretch ends where the next begins, so that no gap is left between them.
    close();
    kind = is;
    above = above.slice(-1);
    below = below.slice(-1);
  }
  close();
  return found;
}

function landKind(land: number, landMin: number): LandKind {
  if (land < 0) return 'overcut';
  return land < landMin ? 'low' : 'good';
}
