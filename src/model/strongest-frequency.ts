import type { MotionSummary } from '../analysis/motion.js';
import type { Hertz } from '../units.js';

/**
 * Strongest frequency of a quarter's treble, rms(ü)/(2π·rms(u̇)), of the wall with more of it;
 * null in silence.
 * @param quarter of the motion summary
 */
export function strongestTreble(
  { left, right }: MotionSummary,
  quarter: number,
  wall: 'left' | 'right' | 'both',
): Hertz | null {
  const louder =
    left.accelerationMeanSquare[quarter]! > right.accelerationMeanSquare[quarter]! ? left : right;
  const motion = wall === 'both' ? louder : wall === 'left' ? left : right;
  const velocity = motion.velocityMeanSquare[quarter] ?? 0;
  if (!(velocity > 0)) return null;
  return Math.sqrt(motion.accelerationMeanSquare[quarter]! / velocity) / (2 * Math.PI);
}

/** Strongest frequency of a quarter's low band; null in silence and outside of the summary. */
export function strongestBass({ lowBand }: MotionSummary, quarter: number): Hertz | null {
  const frequency = lowBand.strongestFrequency[quarter] ?? 0;
  return frequency > 0 ? frequency : null;
}
