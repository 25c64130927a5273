import { BINS_PER_QUARTER } from '../../../../../analysis/motion.js';
import type { HotSpot } from '../../../../../model/forecast-types.js';
import { quartersIn } from '../../../../../model/nodes.js';
import { lengthText } from '../../../../length-text.js';
import type { PageSide } from '../../page-side.js';
import { svg } from '../paint/svg.js';
import type { LandGrid } from './land-grid.js';
import { pointOfBin, type UnrolledLayout } from './unrolled-layout.js';

interface Badge {
  readonly x: number;
  readonly y: number;
  /** How far it reaches to the left and to the right of x. */
  readonly left: number;
  readonly right: number;
}

/** Where a badge may stand beside its place, CSS pixels, the best first. */
const BESIDE = [
  { x: 20, y: -15 },
  { x: -20, y: -15 },
  { x: 20, y: 15 },
  { x: -20, y: 15 },
  { x: 44, y: 0 },
  { x: -44, y: 0 },
  { x: 20, y: -36 },
  { x: -20, y: -36 },
  { x: 20, y: 36 },
  { x: -20, y: 36 },
] as const;
const RADIUS = 8.5;
/** Between the number and the land. */
const GAP = 4;
const LETTER = 6.6;
/** Under it there is room for the number alone. */
const ROOMY = 600;

/** A ring around each hot spot, its number and its land beside it; none covers another. */
export function hotSpotBadges(
  document: Document,
  page: PageSide,
  grid: LandGrid,
  layout: UnrolledLayout,
): Node[] {
  const taken: Badge[] = [];
  return page.forecast.hotSpots.map((spot, rank) => {
    const bin = Math.floor(quartersIn(page.side, spot.atSeconds) * BINS_PER_QUARTER + 1e-6);
    const at = pointOfBin(layout, grid, bin);
    const words = layout.width < ROOMY ? '' : lengthText(spot.land, page.units);
    const badge = freeBadge(at, words, taken, layout);
    taken.push(badge);
    return svg(
      document,
      'g',
      { class: 'badge' },
      svg(document, 'line', { x1: at.x, y1: at.y, x2: badge.x, y2: badge.y }),
      svg(document, 'circle', { class: 'ring', cx: at.x, cy: at.y, r: 6 }),
      ...named(document, badge, spot, rank, words),
    );
  });
}

function named(
  document: Document,
  { x, y, left, right }: Badge,
  { land }: HotSpot,
  rank: number,
  words: string,
): Node[] {
  const isRight = right > left;
  const beside = isRight ? x + RADIUS + GAP : x - RADIUS - GAP;
  const anchor = isRight ? 'start' : 'end';
  const kind = land < 0 ? 'land overcut' : 'land';
  return [
    ...(words === ''
      ? []
      : [
          svg(document, 'text', { class: kind, x: beside, y: y + 4, 'text-anchor': anchor }, words),
        ]),
    svg(document, 'circle', { class: 'disc', cx: x, cy: y, r: RADIUS }),
    svg(document, 'text', { x, y: y + 4, 'text-anchor': 'middle' }, String(rank + 1)),
  ];
}

function freeBadge(
  at: { readonly x: number; readonly y: number },
  words: string,
  taken: readonly Badge[],
  layout: UnrolledLayout,
): Badge {
  const reach = words === '' ? RADIUS : RADIUS + GAP + LETTER * words.length;
  const places = BESIDE.map((offset): Badge => {
    const [left, right] = offset.x > 0 ? [RADIUS, reach] : [reach, RADIUS];
    return { x: at.x + offset.x, y: at.y + offset.y, left, right };
  });
  const isFree = (badge: Badge) =>
    badge.x - badge.left > layout.left &&
    badge.x + badge.right < layout.left + layout.plotWidth &&
    badge.y - RADIUS > layout.top &&
    badge.y + RADIUS < layout.height &&
    taken.every((other) => !doCover(badge, other));
  return places.find(isFree) ?? places[0] ?? { ...at, left: RADIUS, right: RADIUS };
}

function doCover(one: Badge, other: Badge): boolean {
  const isApart =
    one.x - one.left > other.x + other.right || other.x - other.left > one.x + one.right;
  return !isApart && Math.abs(one.y - other.y) < 2 * RADIUS + 1;
}
