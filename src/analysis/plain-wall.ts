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
const STEP_FRAMES = 32;
/** Frames of the program of which the even ones are counted, and as many of which the odd ones are. */
const COUNTED_ALIKE = 2048;

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
    const frames = countedFrames(Math.ceil(from), Math.ceil(until));
    wall.velocityMeanSquare[quarter] = meanSquare(motion.velocity, frames);
    wall.accelerationMeanSquare[quarter] = meanSquare(motion.acceleration, frames);
    const velocities = countClasses(motion.velocity, frames);
    fileQuarter(wall.edgeVelocityHistogram, quarter, velocities, ROOT_TWO_CLASSES);
    const accelerations = countClasses(motion.acceleration, frames, ACCELERATION_UNIT);
    fileQuarter(wall.accelerationHistogram, quarter, accelerations, ACCELERATION_CLASSES);
  }
  return wall;
}

function peakBetween(signal: Float64Array, from: number, until: number): number {
  const up: Frames = (frame) => signal[frame + LEAD_FRAMES] ?? 0;
  const down: Frames = (frame) => -(signal[frame + LEAD_FRAMES] ?? 0);
  return Math.max(maximumBetween(up, from, until), maximumBetween(down, from, until));
}

/**
 * The frames whose squares and classes are taken, from one up to another of the program: every other
 * one, since the base rate is half of this one and holds all that there is. Now the even ones, now
 * the odd ones, so that a lasting tone at a simple fraction of the rate is met at more phases.
 */
function countedFrames(begin: number, end: number): readonly number[] {
  const frames: number[] = [];
  for (let frame = begin; frame < end; frame++) {
    if ((frame - Math.floor(frame / COUNTED_ALIKE)) % 2 === 0) frames.push(frame);
  }
  return frames;
}

function stepOf(frame: number): number {
  return Math.floor(frame / STEP_FRAMES);
}

/** Mean square, over a step in f32 with every other of its frames apart. */
function meanSquare(signal: Float64Array, frames: readonly number[]): number {
  let total = 0;
  let sums = [0, 0];
  for (const [n, frame] of frames.entries()) {
    const lane = Math.floor(frame / 2) % 2;
    const value = signal[LEAD_FRAMES + frame]!;
    sums[lane] = Math.fround(sums[lane]! + Math.fround(value * value));
    const next = frames[n + 1];
    if (next !== undefined && stepOf(next) === stepOf(frame)) continue;
    total += sums[0]! + sums[1]!;
    sums = [0, 0];
  }
  return total / frames.length;
}

function countClasses(signal: Float64Array, frames: readonly number[], unit = 1): Uint32Array {
  const counts = new Uint32Array(COUNTING_CLASSES);
  for (const frame of frames) {
    counts[classOf(signal[LEAD_FRAMES + frame]! / unit) - LOWEST_CLASS]!++;
  }
  return counts;
}
