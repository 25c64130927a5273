import type { MotionSummary } from '../analysis/motion.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import type { ChannelHeadLoad, HeadLoad } from './forecast-types.js';

/**
 * What a channel's coil has to bear: the running mean square of ü over 1 s and 10 s. Mean squares
 * are kept per quarter turn, so a window is the number of whole quarters nearest to it: at 33⅓ rpm
 * two (0.9 s) and 22 (9.9 s). A program shorter than a window counts as if silence surrounded it. At half speed
 * accelerations at the head are a quarter, and a second holds half a second of program.
 * Source: the limit is the house's own meter reading; common practice, no published source.
 */
export function headLoad(motion: MotionSummary, settings: Settings, levelDb: number): HeadLoad {
  const { speedFactor, headLimit } = settings;
  const gain = 10 ** (levelDb / 10) * speedFactor ** 4;
  const quarterSeconds = motion.turnSeconds / 4 / speedFactor;
  const loadOf = (meanSquares: Float64Array): ChannelHeadLoad => {
    const oneSecond = gain * largestMean(meanSquares, windowQuarters(1, quarterSeconds));
    const tenSeconds = gain * largestMean(meanSquares, windowQuarters(10, quarterSeconds));
    const larger = Math.max(oneSecond, tenSeconds);
    return { oneSecond, tenSeconds, limitRatio: headLimit === null ? null : larger / headLimit };
  };
  return {
    left: loadOf(motion.left.accelerationMeanSquare),
    right: loadOf(motion.right.accelerationMeanSquare),
  };
}

function windowQuarters(seconds: Seconds, quarterSeconds: Seconds): number {
  return Math.max(1, Math.round(seconds / quarterSeconds));
}

/** Largest mean of `length` neighbouring entries; entries outside of the row are 0. */
function largestMean(row: Float64Array, length: number): number {
  let largest = 0;
  let sum = 0;
  for (let at = 0; at < row.length; at++) {
    sum += row[at]! - (at >= length ? row[at - length]! : 0);
    if (sum > largest) largest = sum;
  }
  return largest / length;
}
