import type { Metres } from '../units.js';

/** A track as far as its place in the running order matters to it. */
export interface OrderTrack {
  readonly name: string;
  /** It keeps its place. */
  readonly isPinned: boolean;
  /** From its first sample to its last, with the pitch it is planned with. */
  readonly radiusUsed: Metres;
  /** Samples of both walls that bend too tight if the track begins at a radius. */
  readonly tightAt: (startRadius: Metres) => number;
}

/** An order with the fewest samples that bend too tight. */
export interface BestOrder {
  /** Places in the given order: `order[0]` is the track to come first. */
  readonly order: readonly number[];
  readonly tightBefore: number;
  readonly tight: number;
  /** Whether every order was looked at: not of more than twelve tracks. */
  readonly isExhaustive: boolean;
}

/** As many orders as subsets of so many tracks are looked at in a fraction of a second. */
const MOST_TRACKS = 12;

/**
 * The running order that gives tracks full of treble the fastest groove: the fewest samples that
 * bend too tight in sum, each track at the radius that those before it leave; pinned ones stay. Of
 * equal orders the given one, else the one nearest to it from the front. Never applied by itself.
 * @param start radius at which the side begins
 * @param gaps radius that lies before each place, wherever a track comes from
 */
export function runningOrder(
  tracks: readonly OrderTrack[],
  start: Metres,
  gaps: readonly Metres[],
): BestOrder {
  const given = tracks.map((_, at) => at);
  const tightBefore = tightIn(given, tracks, start, gaps);
  const isExhaustive = tracks.length <= MOST_TRACKS;
  const order = isExhaustive
    ? leastOfAll(tracks, start, gaps)
    : leastBySwaps(given, tracks, start, gaps);
  const tight = tightIn(order, tracks, start, gaps);
  return tight < tightBefore
    ? { order, tightBefore, tight, isExhaustive }
    : { order: given, tightBefore, tight: tightBefore, isExhaustive };
}

/** Samples that bend too tight in an order. */
export function tightIn(
  order: readonly number[],
  tracks: readonly OrderTrack[],
  start: Metres,
  gaps: readonly Metres[],
): number {
  let radius = start;
  let tight = 0;
  for (const [place, at] of order.entries()) {
    radius -= gaps[place] ?? 0;
    tight += tracks[at]!.tightAt(radius);
    radius -= tracks[at]!.radiusUsed;
  }
  return tight;
}

/**
 * By subsets: where a track begins depends on which tracks lie outside of it, not on their order.
 * Source: the recursion of Held and Karp, 1962 (from memory), without its cost of neighbours.
 */
function leastOfAll(
  tracks: readonly OrderTrack[],
  start: Metres,
  gaps: readonly Metres[],
): number[] {
  const all = 2 ** tracks.length - 1;
  const rest = new Float64Array(all + 1).fill(Number.NaN);
  const next = new Int8Array(all + 1).fill(-1);
  const least = (used: number, radius: Metres, place: number): number => {
    if (used === all) return 0;
    if (!Number.isNaN(rest[used]!)) return rest[used]!;
    const begins = radius - (gaps[place] ?? 0);
    let best = Number.POSITIVE_INFINITY;
    for (const [at, track] of tracks.entries()) {
      const isUsed = (used & (1 << at)) !== 0;
      // What is pinned comes at its own place, and nothing else does.
      if (isUsed || (track.isPinned ? at !== place : tracks[place]!.isPinned)) continue;
      const inner = begins - track.radiusUsed;
      const tight = track.tightAt(begins) + least(used | (1 << at), inner, place + 1);
      if (tight >= best) continue;
      best = tight;
      next[used] = at;
    }
    rest[used] = best;
    return best;
  };
  least(0, start, 0);
  const order: number[] = [];
  for (let used = 0; used !== all; used |= 1 << order.at(-1)!) order.push(next[used]!);
  return order;
}

/** By exchanging two tracks, the best two first, until no exchange is better. */
function leastBySwaps(
  given: readonly number[],
  tracks: readonly OrderTrack[],
  start: Metres,
  gaps: readonly Metres[],
): number[] {
  let order = [...given];
  let tight = tightIn(order, tracks, start, gaps);
  for (;;) {
    const swapped = swapsOf(order, tracks)
      .map((one) => ({ one, tight: tightIn(one, tracks, start, gaps) }))
      .reduce((best, next) => (next.tight < best.tight ? next : best), { one: order, tight });
    if (swapped.tight >= tight) return order;
    ({ one: order, tight } = swapped);
  }
}

function swapsOf(order: readonly number[], tracks: readonly OrderTrack[]): number[][] {
  const free = order.flatMap((at, place) => (tracks[at]!.isPinned ? [] : [place]));
  return free.flatMap((one, index) =>
    free.slice(index + 1).map((other) => {
      const swapped = [...order];
      swapped[one] = order[other]!;
      swapped[other] = order[one]!;
      return swapped;
    }),
  );
}
