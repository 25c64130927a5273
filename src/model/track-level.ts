import type { Hertz, Seconds } from '../units.js';
import type { Plan } from './plan.js';
import type { PlannedSide } from './planned-side.js';
import type { HandTrack } from './side-plan-input.js';

/** How loud a track is cut; all but the time are null in silence. */
export interface TrackLevel {
  /** Mean square of the two walls' velocity, dB re that of a 1 kHz sine of referenceVelocity. */
  readonly averageDb: number | null;
  /** The same of its loudest quarter turn. */
  readonly loudestDb: number | null;
  readonly loudestAtSeconds: Seconds | null;
  /** rms(ü)/(2π·rms(u̇)): the higher, the more treble for its level. */
  readonly meanFrequency: Hertz | null;
}

/**
 * Level and brightness of a track at the planned level, from the quarters it touches, each by how
 * much of it it touches. The reference, an in-phase sine of lateral peak velocity v, has a mean
 * square of v²/4 on each wall.
 */
export function trackLevel(side: PlannedSide, plan: Plan, track: HandTrack): TrackLevel {
  const { velocityPower, motion, lead, quarterSeconds, programCount, settings } = side;
  const { left, right } = motion;
  const from = track.fromSeconds / quarterSeconds;
  const until = Math.min(track.untilSeconds / quarterSeconds, programCount);
  let [weight, velocity, acceleration, loudest, most] = [0, 0, 0, 0, -1];
  for (let quarter = Math.floor(from); quarter < until; quarter++) {
    const share = Math.min(until, quarter + 1) - Math.max(from, quarter);
    const power = velocityPower[lead + quarter]!;
    const bend =
      (left.accelerationMeanSquare[quarter]! + right.accelerationMeanSquare[quarter]!) / 2;
    weight += share;
    velocity += share * power;
    acceleration += share * bend;
    // A quarter that is shared with a neighbour is the louder one's only if it is more than half its.
    if (share < 0.5 || power <= loudest) continue;
    loudest = power;
    most = quarter;
  }
  const reference = settings.referenceVelocity ** 2 / 4 / plan.gain ** 2;
  const level = (power: number) => (power > 0 ? 10 * Math.log10(power / reference) : null);
  return {
    averageDb: level(velocity / weight),
    loudestDb: level(loudest),
    loudestAtSeconds: most < 0 ? null : Math.max(track.fromSeconds, most * quarterSeconds),
    meanFrequency: velocity > 0 ? Math.sqrt(acceleration / velocity) / (2 * Math.PI) : null,
  };
}
