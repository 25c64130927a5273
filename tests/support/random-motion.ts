import fc from 'fast-check';
import {
  BINS_PER_QUARTER,
  type MotionSummary,
  QUARTERS_PER_TURN,
} from '../../src/analysis/motion.js';
import { emptyMotion } from './empty-motion.js';
import { fillHistogram } from './motion-of.js';

const BINS_PER_TURN = BINS_PER_QUARTER * QUARTERS_PER_TURN;

/** What a random summary is made from; the same seed gives the same summary. */
export interface RandomMotionOptions {
  /** Largest displacement of a wall, m. */
  readonly amplitude?: number;
  readonly longestTurns?: number;
}

/**
 * Motion summaries that some pair of walls could have: every extreme lies within what the walls'
 * own extremes allow, so approach ≤ approachLoose ≤ outward now + inward a turn ago.
 * Not one of every kind of sound: quarters of silence, of noise and of single peaks.
 */
export function randomMotion(options: RandomMotionOptions = {}): fc.Arbitrary<MotionSummary> {
  const { amplitude = 40e-6, longestTurns = 5 } = options;
  return fc
    .record({
      turns: fc.double({ min: 0.1, max: longestTurns, noNaN: true }),
      turnSeconds: fc.constantFrom(1.8, 4 / 3),
      seed: fc.integer({ min: 1, max: 2 ** 31 - 1 }),
      loudness: fc.array(fc.constantFrom(0, 0, 0.05, 0.3, 1), { minLength: 4, maxLength: 12 }),
    })
    .map(({ turns, turnSeconds, seed, loudness }) => {
      const next = numbers(seed);
      const motion = emptyMotion(turns * turnSeconds, turnSeconds);
      const programBins = Math.ceil(turns * BINS_PER_TURN - 1e-9);
      for (let bin = 0; bin < programBins; bin++) {
        const quarter = Math.floor(bin / BINS_PER_QUARTER);
        const reach = amplitude * loudness[quarter % loudness.length]!;
        fillBin(motion, bin, reach, next);
      }
      fillApproach(motion, next);
      for (let quarter = 0; quarter * BINS_PER_QUARTER < programBins; quarter++) {
        fillWalls(motion, quarter, loudness[quarter % loudness.length]!, next);
      }
      return motion;
    });
}

/** One bin's extremes, out of the walls' least and largest displacement in it. */
function fillBin(motion: MotionSummary, bin: number, reach: number, next: () => number): void {
  const [upL, downL, upR, downR] = [next() * reach, next() * reach, next() * reach, next() * reach];
  motion.outward[bin] = Math.SQRT2 * upR;
  motion.inward[bin] = Math.SQRT2 * downL;
  motion.lift[bin] = ((upL + downR) / Math.SQRT2) * next();
  motion.sink[bin] = ((downL + upR) / Math.SQRT2) * next();
  motion.lateral[bin] = (Math.max(upL + upR, downL + downR) / Math.SQRT2) * next();
}

function fillApproach(motion: MotionSummary, next: () => number): void {
  for (let bin = 0; bin < motion.approach.length; bin++) {
    const furthest = motion.outward[bin]! + (motion.inward[bin - BINS_PER_TURN] ?? 0);
    motion.approachLoose[bin] = furthest * next();
    motion.approach[bin] = motion.approachLoose[bin]! * next();
  }
}

/** Magnitudes up to 0.5 m/s and 10 000 m/s², where facets and bends begin to matter. */
function fillWalls(
  motion: MotionSummary,
  quarter: number,
  loudness: number,
  next: () => number,
): void {
  if (loudness === 0) return;
  for (const wall of [motion.left, motion.right]) {
    const velocities = Array.from({ length: 50 }, () => 0.5 * loudness * next());
    const bends = Array.from({ length: 50 }, () => 10_000 * loudness * next());
    wall.velocityPeak[quarter] = Math.max(...velocities);
    wall.accelerationPeak[quarter] = Math.max(...bends);
    wall.velocityMeanSquare[quarter] = velocities.reduce((sum, v) => sum + v * v, 0) / 50;
    wall.accelerationMeanSquare[quarter] = bends.reduce((sum, a) => sum + a * a, 0) / 50;
    fillHistogram(
      wall.edgeVelocityHistogram,
      quarter,
      velocities.map((velocity) => Math.SQRT2 * velocity),
    );
    fillHistogram(wall.accelerationHistogram, quarter, bends);
  }
}

/** Numbers from 0 to 1, both left out: a linear congruence of period 2³¹ − 2, by Lehmer. */
function numbers(seed: number): () => number {
  let state = seed % 2_147_483_647;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
