import type { Jumps } from './jump-list.js';
import type { MotionSummary } from './motion.js';
import type { Part } from './parts.js';
import type { ProgramSums } from './program-checks.js';

/** Columns of the summary that have an entry a bin. */
export const BIN_COLUMNS = [
  'approach',
  'approachLoose',
  'lift',
  'sink',
  'lateral',
  'outward',
  'inward',
] as const;

/** The maxima per bin of everything that is made of the two displacements, m. */
export type BinMaxima = Pick<MotionSummary, (typeof BIN_COLUMNS)[number]>;

/**
 * What the pass finds in one part of a program: rows over the part's own quarters and bins, and
 * what it adds to the figures of the whole program. Plain data, which crosses threads.
 */
export interface PartMotion {
  readonly part: Part;
  readonly bins: BinMaxima;
  readonly left: MotionSummary['left'];
  readonly right: MotionSummary['right'];
  readonly lowBand: MotionSummary['lowBand'];
  readonly sums: ProgramSums;
  /** Largest |program| between samples; [left, right]. */
  readonly truePeak: readonly [number, number];
  /** Power that the last halving keeps out, summed over frames of the base rate; [left, right]. */
  readonly ultrasonicPower: readonly [number, number];
  /** K-weighted power, summed over the channels, of each whole 100 ms. */
  readonly stepPowers: Float64Array;
  readonly jumps: Jumps;
}
