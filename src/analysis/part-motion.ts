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

/** Columns of the summary over some of its quarters and their bins. */
export interface MotionRows extends Pick<MotionSummary, 'left' | 'right' | 'lowBand'> {
  readonly bins: BinMaxima;
}

/** What one part of a program adds to the figures of the whole. */
export interface PartFigures {
  readonly part: Part;
  readonly sums: ProgramSums;
  /** Largest |program| between samples; [left, right]. */
  readonly truePeak: readonly [number, number];
  /** Power that the last halving keeps out, summed over frames of the base rate; [left, right]. */
  readonly ultrasonicPower: readonly [number, number];
  /** K-weighted power, summed over the channels, of each whole 100 ms. */
  readonly stepPowers: Float64Array;
  readonly jumps: Jumps;
}

/**
 * What the pass finds in one part of a program: its figures, and rows over its own quarters and
 * bins. Plain data, which crosses threads.
 */
export interface PartMotion extends PartFigures, MotionRows {}

/** A part's figures without its rows. */
export function figuresOf(motion: PartMotion): PartFigures {
  const { part, sums, truePeak, ultrasonicPower, stepPowers, jumps } = motion;
  return { part, sums, truePeak, ultrasonicPower, stepPowers, jumps };
}
