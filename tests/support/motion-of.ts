import {
  BINS_PER_QUARTER,
  HISTOGRAM_CLASSES,
  type MotionSummary,
} from '../../src/analysis/motion.js';
import { emptyMotion } from './empty-motion.js';

/** Displacement of a wall along its 45° axis at a program time, m; inside the program only. */
export type Displacement = (atSeconds: number) => number;

export interface MotionOptions {
  readonly turns: number;
  readonly turnSeconds?: number;
  readonly speedTolerance?: number;
  readonly left: Displacement;
  readonly right: Displacement;
}

/** Samples of a bin, its edges included. */
const SAMPLES = 257;
/** Pairings that are tried for approachLoose. */
const PAIRINGS = 17;
const STEP_SECONDS = 1e-6;

/**
 * The summary of walls that move by a formula: straight from the definitions, by dense sampling.
 * The low band and the file's own checks are those of emptyMotion.
 */
export function motionOf(options: MotionOptions): MotionSummary {
  const { turns, turnSeconds = 1.8, speedTolerance = 0 } = options;
  const motion = emptyMotion(turns * turnSeconds, turnSeconds);
  const left = within(options.left, motion.durationSeconds);
  const right = within(options.right, motion.durationSeconds);
  const binSeconds = turnSeconds / 4 / BINS_PER_QUARTER;
  const slack = speedTolerance * turnSeconds;
  for (let bin = 0; bin < motion.approach.length; bin++) {
    const least = Number.NEGATIVE_INFINITY;
    const most = [least, least, least, least, least, least, least];
    for (let sample = 0; sample < SAMPLES; sample++) {
      const at = (bin + sample / (SAMPLES - 1)) * binSeconds;
      const [uL, uR] = [left(at), right(at)];
      const outer = Math.SQRT2 * uR;
      const nearest = leastAround(left, at - turnSeconds, slack);
      const values = [
        outer - Math.SQRT2 * left(at - turnSeconds),
        outer - Math.SQRT2 * nearest,
        (uL - uR) / Math.SQRT2,
        (uR - uL) / Math.SQRT2,
        Math.abs(uL + uR) / Math.SQRT2,
        -Math.SQRT2 * leastAround((time) => -right(time), at, slack),
        -Math.SQRT2 * leastAround(left, at, slack),
      ];
      for (const [row, value] of values.entries()) most[row] = Math.max(most[row]!, value);
    }
    const { approach, approachLoose, lift, sink, lateral, outward, inward } = motion;
    const rows = [approach, approachLoose, lift, sink, lateral, outward, inward];
    for (const [row, values] of rows.entries()) values[bin] = most[row]!;
  }
  for (const [wall, displacement] of [
    ['left', left],
    ['right', right],
  ] as const) {
    fillWall(motion, wall, displacement);
  }
  return motion;
}

function within(displacement: Displacement, durationSeconds: number): Displacement {
  return (at) => (at >= 0 && at <= durationSeconds ? displacement(at) : 0);
}

function leastAround(displacement: Displacement, at: number, slack: number): number {
  if (slack === 0) return displacement(at);
  let least = Number.POSITIVE_INFINITY;
  for (let pairing = 0; pairing < PAIRINGS; pairing++) {
    const shift = slack * ((2 * pairing) / (PAIRINGS - 1) - 1);
    least = Math.min(least, displacement(at + shift));
  }
  return least;
}

/** Peaks, mean squares and histograms by differences; not at the very ends of the program. */
function fillWall(motion: MotionSummary, wall: 'left' | 'right', u: Displacement): void {
  const row = motion[wall];
  const quarterSeconds = motion.turnSeconds / 4;
  const samples = BINS_PER_QUARTER * SAMPLES;
  for (let quarter = 0; quarter < motion.quarterCount; quarter++) {
    const edges: number[] = [];
    const bends: number[] = [];
    for (let sample = 0; sample < samples; sample++) {
      const at = (quarter + (sample + 0.5) / samples) * quarterSeconds;
      const [before, here, after] = [u(at - STEP_SECONDS), u(at), u(at + STEP_SECONDS)];
      edges.push(Math.abs(after - before) / (2 * STEP_SECONDS));
      bends.push(Math.abs(after - 2 * here + before) / STEP_SECONDS ** 2);
    }
    row.velocityPeak[quarter] = Math.max(...edges);
    row.accelerationPeak[quarter] = Math.max(...bends);
    row.velocityMeanSquare[quarter] = edges.reduce((sum, v) => sum + v * v, 0) / samples;
    row.accelerationMeanSquare[quarter] = bends.reduce((sum, a) => sum + a * a, 0) / samples;
    const edgeVelocities = edges.map((velocity) => Math.SQRT2 * velocity);
    fillHistogram(row.edgeVelocityHistogram, quarter, edgeVelocities);
    fillHistogram(row.accelerationHistogram, quarter, bends);
  }
}

/** Files magnitudes into the classes that motion.ts defines. */
export function fillHistogram(
  { topClass, counts }: MotionSummary['left']['accelerationHistogram'],
  quarter: number,
  magnitudes: readonly number[],
): void {
  const classes = magnitudes.map((magnitude) =>
    Math.max(-64, Math.floor(4 * Math.log2(magnitude))),
  );
  const top = Math.max(...classes);
  topClass[quarter] = top;
  for (const one of classes) {
    const entry = Math.min(top - one, HISTOGRAM_CLASSES - 1);
    counts[quarter * HISTOGRAM_CLASSES + entry]! += 1;
  }
}
