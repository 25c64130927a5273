import { emptyHistogram } from './histogram.js';
import type { WallMotion } from './motion.js';

/** A wall at rest over a number of quarters, to be filled in. */
export function emptyWall(quarterCount: number): WallMotion {
  return {
    velocityPeak: new Float64Array(quarterCount),
    accelerationPeak: new Float64Array(quarterCount),
    velocityMeanSquare: new Float64Array(quarterCount),
    accelerationMeanSquare: new Float64Array(quarterCount),
    edgeVelocityHistogram: emptyHistogram(quarterCount),
    accelerationHistogram: emptyHistogram(quarterCount),
  };
}
