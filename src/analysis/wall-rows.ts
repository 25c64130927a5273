import { emptyHistogram } from './histogram.js';
import type { WallMotion } from './motion.js';
import { ownMemory } from './row-memory.js';

/** A wall at rest over a number of quarters, to be filled in. */
export function emptyWall(quarterCount: number, memory = ownMemory): WallMotion {
  const row = (): Float64Array => new Float64Array(memory(8 * quarterCount));
  return {
    velocityPeak: row(),
    accelerationPeak: row(),
    velocityMeanSquare: row(),
    accelerationMeanSquare: row(),
    edgeVelocityHistogram: emptyHistogram(quarterCount, memory),
    accelerationHistogram: emptyHistogram(quarterCount, memory),
  };
}
