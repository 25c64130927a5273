import type { MotionSummary } from '../analysis/motion.js';
import type { Cut } from './apply-remedies.js';
import { movedMotion, type QuarterRun } from './moved-motion.js';

/**
 * About the motion of a side whose tracks lie otherwise, without measuring it: each track's quarters
 * at the nearest ones where it comes to lie. Good enough to choose by, since a track that lies a
 * quarter turn off has all but the same radius; what faces what across a gap is as it was.
 */
export function predictedMotion(motion: MotionSummary, given: Cut, arranged: Cut): MotionSummary {
  const quarter = motion.turnSeconds / 4;
  const nearest = (seconds: number) => Math.round(seconds / quarter);
  const runs = arranged.hand.tracks.flatMap(
    ({ fromSeconds, untilSeconds }, place): QuarterRun[] => {
      const track = given.hand.tracks[arranged.order[place] ?? place];
      if (track === undefined) return [];
      const from = nearest(track.fromSeconds);
      const to = nearest(fromSeconds);
      return [{ from, end: from + nearest(untilSeconds) - to, to }];
    },
  );
  const duration = arranged.hand.tracks.at(-1)?.untilSeconds ?? motion.durationSeconds;
  return movedMotion(motion, duration, runs);
}
