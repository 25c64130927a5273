import { LEAD_FRAMES } from './band-limit.js';
import type { FilteredMotion } from './filter-motion.js';
import {
  ACCELERATION_CLASSES,
  ACCELERATION_UNIT,
  COUNTING_CLASSES,
  classOf,
  fileQuarter,
  LOWEST_CLASS,
  ROOT_TWO_CLASSES,
} from './histogram.js';
import { type Frames, maximumBetween } from './interpolate.js';
import { BINS_PER_QUARTER, type WallMotion } from './motion.js';
import { binEdge, type SpiralClock } from './spiral-clock.js';
import { emptyWall } from './wall-rows.js';

/** Frames of which squares are summed in f32. */
const SUMMED_FRAMES = 32;

/**
 * Velocity and acceleration of one wall per quarter turn; the plain definition.
 * @param motion begins LEAD_FRAMES before the program
 */
export function measureWall(
  motion: FilteredMotion,
  clock: SpiralClock,
  quarterCount: number,
): WallMotion {
  const wall = emptyWall(quarterCount);
  for (let quarter = 0; quarter < quarterCount; quarter++) {
    const from = binEdge(clock, quarter * BINS_PER_QUARTER);
    const until = binEdge(clock, (quarter + 1) * BINS_PER_QUARTER);
    wall.velocityPeak[quarter] = peakBetween(motion.velocity, from, until);
    wall.accelerationPeak[quarter] = peakBetween(motion.acceleration, from, until);
    const frames = [LEAD_FRAMES + Math.ceil(from), LEAD_FRAMES + Math.ceil(until)] as const;
    const velocity = motion.velocity.subarray(...frames);
    const acceleration = motion.acceleration.subarray(...frames);
    wall.velocityMeanSquare[quarter] = meanSquare(velocity, frames[0]);
    wall.accelerationMeanSquare[quarter] = meanSquare(acceleration, frames[0]);
    fileQuarter(wall.edgeVelocityHistogram, quarter, countClasses(velocity), ROOT_TWO_CLASSES);
    const inUnits = acceleration.map((value) => value / ACCELERATION_UNIT);
    fileQuarter(wall.accelerationHistogram, quarter, countClasses(inUnits), ACCELERATION_CLASSES);
  }
  return wall;
}

function peakBetween(signal: Float64Array, from: number, until: number): number {
  const up: Frames = (frame) => signal[frame + LEAD_FRAMES] ?? 0;
  const down: Frames = (frame) => -(signal[frame + LEAD_FRAMES] ?? 0);
  return Math.max(maximumBetween(up, from, until), maximumBetween(down, from, until));
}

/**
 * Mean square, in f32 over every whole step or what of it the signal holds: of its even frames and
 * then its odd ones, with every other of each apart.
 * @param first number of the signal's first frame, from the start of the lead
 */
function meanSquare(signal: Float64Array, first: number): number {
  let total = 0;
  for (let begin = 0; begin < signal.length; ) {
    const end = Math.min(signal.length, begin + SUMMED_FRAMES - ((first + begin) % SUMMED_FRAMES));
    const sums = [0, 0];
    for (const isOdd of [0, 1]) {
      for (let n = begin; n < end; n++) {
        if ((first + n) % 2 !== isOdd) continue;
        const lane = Math.floor((first + n) / 2) % 2;
        sums[lane] = Math.fround(sums[lane]! + Math.fround(signal[n]! * signal[n]!));
      }
    }
    total += sums[0]! + sums[1]!;
    begin = end;
  }
  return total / signal.length;
}

function countClasses(signal: Float64Array): Uint32Array {
  const counts = new Uint32Array(COUNTING_CLASSES);
  for (const value of signal) counts[classOf(value) - LOWEST_CLASS]!++;
  return counts;
}
