import type { Metres, Seconds } from '../units.js';
import { grooveSpeed } from './disc.js';
import { type RankedHistogram, samplesIn, samplesOver } from './histogram-share.js';
import type { Plan } from './plan.js';
import type { PlannedSide } from './planned-side.js';
import type { HandTrack } from './side-plan-input.js';

/** How much of a track bends tighter than the playback tip, wherever on the side it lies. */
export interface TrackBends {
  /** Samples of both walls. */
  readonly samples: number;
  /** Samples that bend too tight if the whole track lies so much further out than planned. */
  readonly tightAt: (further: Metres) => number;
}

/**
 * Bends of a track under the playback tip, V²/|ü|, at the groove speed of each of its quarters:
 * those whose middle lies in it. The pitch is as planned, the radius moved as a whole.
 */
export function trackBends(side: PlannedSide, plan: Plan, track: HandTrack): TrackBends {
  const { left, right, motion, settings, quarterSeconds, programCount, lead } = side;
  const nearest = (at: Seconds) => Math.min(Math.round(at / quarterSeconds), programCount);
  const [first, end] = [nearest(track.fromSeconds), nearest(track.untilSeconds)];
  const walls: readonly RankedHistogram[] = [left.acceleration, right.acceleration];
  let samples = 0;
  for (let quarter = first; quarter < end; quarter++) {
    for (const wall of walls) samples += samplesIn(wall, quarter);
  }
  const tightAt = (further: Metres) => {
    let tight = 0;
    for (let quarter = first; quarter < end; quarter++) {
      const radius = plan.radius[lead + quarter + 1]! + further;
      // No groove runs inside the finishing groove: judged as if at its edge.
      const least = Math.max(radius, settings.finishingDiameter / 2);
      const speed = grooveSpeed(least, motion.turnSeconds);
      const threshold = speed ** 2 / settings.playbackTip / plan.gain;
      for (const wall of walls) tight += samplesOver(wall, quarter, threshold);
    }
    return tight;
  };
  return { samples, tightAt };
}
