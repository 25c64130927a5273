import type { MovedWall } from '../../../model/moved-wall.js';

const WALLS = ['both', 'left', 'right'] as const satisfies readonly MovedWall['wall'][];
const CAUSES = [
  'lateral-low',
  'lateral-high',
  'vertical',
  'one-wall',
] as const satisfies readonly MovedWall['cause'][];

/** How many codes there are. */
export const MOVED_WALLS = WALLS.length * CAUSES.length * 4;

/** All of it as one integer, under MOVED_WALLS. */
export function movedWallCode({ wall, cause, isInner, isBass }: MovedWall): number {
  const moved = WALLS.indexOf(wall) * CAUSES.length + CAUSES.indexOf(cause);
  return 4 * moved + (isInner ? 2 : 0) + (isBass ? 1 : 0);
}

export function movedWallOf(code: number): MovedWall {
  const moved = Math.floor(code / 4);
  return {
    wall: WALLS[Math.floor(moved / CAUSES.length)] ?? 'both',
    cause: CAUSES[moved % CAUSES.length] ?? 'lateral-low',
    isInner: (code & 2) !== 0,
    isBass: (code & 1) !== 0,
  };
}
