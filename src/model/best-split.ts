import type { Metres, Seconds } from '../units.js';

/** A track as far as it fills a side. */
export interface SplitTrack {
  readonly name: string;
  /** With the gap before it. */
  readonly radiusUsed: Metres;
  readonly durationSeconds: Seconds;
}

export interface Split {
  /** How many tracks go on each side. */
  readonly counts: readonly number[];
  /** What the fullest side takes. */
  readonly most: Metres;
}

/** Part of the fullest side that another split must save to be told; common practice. */
const WORTH_TELLING = 0.05;

/**
 * Where to part a running order over as many sides so that the fullest takes the least radius, each
 * track taking what it is planned with. Of equal splits the one whose first sides hold more.
 * @param sides tracks side by side, on the same disc at the same speed
 * @returns null where the sides are balanced: no split makes the fullest at least a twentieth
 *   less full
 */
export function bestSplit(sides: readonly (readonly SplitTrack[])[]): Split | null {
  const tracks = sides.flat();
  const given = Math.max(...sides.map(radiusOf));
  const best = leastMost(tracks, sides.length);
  return best !== null && best.most <= given * (1 - WORTH_TELLING) ? best : null;
}

/** What tracks take together. */
export function radiusOf(tracks: readonly SplitTrack[]): Metres {
  return tracks.reduce((sum, { radiusUsed }) => sum + radiusUsed, 0);
}

/** null if there are fewer tracks than sides: none is left empty. */
function leastMost(tracks: readonly SplitTrack[], sides: number): Split | null {
  if (tracks.length < sides) return null;
  if (sides <= 1) return { counts: [tracks.length], most: radiusOf(tracks) };
  let best: Split | null = null;
  for (let count = tracks.length - sides + 1; count > 0; count--) {
    const first = radiusOf(tracks.slice(0, count));
    // A longer rest is fuller: no shorter first side can be better.
    if (best !== null && radiusOf(tracks.slice(count)) / (sides - 1) >= best.most) break;
    const rest = leastMost(tracks.slice(count), sides - 1);
    if (rest === null) continue;
    const most = Math.max(first, rest.most);
    if (best === null || most < best.most) best = { counts: [count, ...rest.counts], most };
  }
  return best;
}
