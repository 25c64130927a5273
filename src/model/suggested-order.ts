import { radiusAt } from './bands.js';
import type { RunningOrder } from './forecast-types.js';
import type { Plan } from './plan.js';
import type { PlannedSide } from './planned-side.js';
import { type OrderTrack, runningOrder } from './running-order.js';
import { trackBends } from './track-bends.js';

/**
 * The running order of a planned side's tracks that bends least under the playback tip, each track
 * with the pitch it is planned with and each gap at its place. null without two tracks that may move.
 */
export function suggestedOrder(side: PlannedSide, plan: Plan): RunningOrder | null {
  const { tracks } = side.hand;
  if (tracks.filter(({ isPinned }) => isPinned !== true).length < 2) return null;
  const start = side.settings.startDiameter / 2;
  const begins = tracks.map(({ fromSeconds }) => radiusAt(side, plan, fromSeconds));
  const ends = tracks.map(({ untilSeconds }) => radiusAt(side, plan, untilSeconds));
  const bends = tracks.map((track) => trackBends(side, plan, track));
  const placed = tracks.map(({ name, isPinned }, at): OrderTrack => {
    const planned = begins[at]!;
    return {
      name,
      isPinned: isPinned === true,
      radiusUsed: planned - ends[at]!,
      tightAt: (radius) => bends[at]!.tightAt(radius - planned),
    };
  });
  const gaps = begins.map((radius, at) => (ends[at - 1] ?? start) - radius);
  const best = runningOrder(placed, start, gaps);
  const samples = bends.reduce((sum, each) => sum + each.samples, 0);
  const shareOf = (tight: number) => (samples > 0 ? tight / samples : 0);
  return {
    order: best.order,
    bendShareBefore: shareOf(best.tightBefore),
    bendShare: shareOf(best.tight),
    isExhaustive: best.isExhaustive,
  };
}
