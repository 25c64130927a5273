import { BINS_PER_QUARTER } from '../../../../../analysis/motion.js';
import { quartersIn } from '../../../../../model/nodes.js';
import type { PageSide } from '../../page-side.js';
import { svg } from '../paint/svg.js';
import type { LandGrid } from './land-grid.js';
import { pointOfBin, type UnrolledLayout } from './unrolled-layout.js';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where a badge may stand beside its place, CSS pixels, the best first. */
const BESIDE: readonly Point[] = [
  { x: 20, y: -14 },
  { x: -20, y: -14 },
  { x: 20, y: 14 },
  { x: -20, y: 14 },
  { x: 40, y: 0 },
  { x: -40, y: 0 },
];
const BADGE_RADIUS = 8.5;

/** A ring around each hot spot with its number beside it; numbers do not cover one another. */
export function hotSpotBadges(
  document: Document,
  page: PageSide,
  grid: LandGrid,
  layout: UnrolledLayout,
): Node[] {
  const taken: Point[] = [];
  return page.forecast.hotSpots.map(({ atSeconds }, rank) => {
    const bin = Math.floor(quartersIn(page.side, atSeconds) * BINS_PER_QUARTER + 1e-6);
    const at = pointOfBin(layout, grid, bin);
    const badge = freePlace(at, taken, layout);
    taken.push(badge);
    return svg(
      document,
      'g',
      { class: 'badge' },
      svg(document, 'line', { x1: at.x, y1: at.y, x2: badge.x, y2: badge.y }),
      svg(document, 'circle', { class: 'ring', cx: at.x, cy: at.y, r: 6 }),
      svg(document, 'circle', { class: 'disc', cx: badge.x, cy: badge.y, r: BADGE_RADIUS }),
      svg(
        document,
        'text',
        { x: badge.x, y: badge.y + 4, 'text-anchor': 'middle' },
        String(rank + 1),
      ),
    );
  });
}

function freePlace(at: Point, taken: readonly Point[], layout: UnrolledLayout): Point {
  const places = BESIDE.map((offset) => ({ x: at.x + offset.x, y: at.y + offset.y }));
  const isFree = (place: Point) =>
    place.x > layout.left + BADGE_RADIUS &&
    place.x < layout.left + layout.plotWidth - BADGE_RADIUS &&
    place.y > BADGE_RADIUS &&
    place.y < layout.height - BADGE_RADIUS &&
    taken.every((other) => Math.hypot(other.x - place.x, other.y - place.y) > 2 * BADGE_RADIUS + 1);
  return places.find(isFree) ?? places[0] ?? at;
}
