import type { Histogram } from '../../../analysis/motion.js';
import { BINS_PER_QUARTER, HISTOGRAM_CLASSES } from '../../../analysis/motion.js';
import type { BinMask } from './deciding-bins.js';

/** Rows of which bins are kept, each with the mask that says which. */
export interface KeptBins {
  readonly mask: BinMask;
  /** All bins; 0 where none is kept. */
  readonly steps: Int32Array;
}

export interface KeptWall {
  readonly velocityPeak: Int32Array;
  readonly accelerationPeak: Int32Array;
  readonly velocityMeanSquare: Int32Array;
  readonly accelerationMeanSquare: Int32Array;
  readonly edgeVelocity: Histogram;
  readonly acceleration: Histogram;
}

/** Least class of a histogram that is told apart. */
export interface LeastClasses {
  readonly edgeVelocity: number;
  readonly acceleration: number;
}

/**
 * What a page keeps of a motion summary, in steps (`lengthSteps`, `numberSteps`).
 * - `approachLoose`, `approach`, `lift`, `sink`: the bins that can decide over land or width;
 * - of all else that hangs on single bins: what takes the land, and the lift of the two turns that
 *   may meet there, in 1/255 of its quarter, where a hot spot can be;
 * - histograms: the classes that a limit can lie in;
 * - of the low band: the strongest frequency and the vertical amplitude.
 */
export interface KeptMotion {
  readonly leastClasses: LeastClasses;
  readonly approachLoose: KeptBins;
  readonly approach: KeptBins;
  readonly lift: KeptBins;
  readonly sink: KeptBins;
  /** `movedWallCode`, in the bins of approachLoose. */
  readonly movedWalls: Int32Array;
  /** Codes of lift in the bins of `contactMask`. */
  readonly contactLift: Int32Array;
  /** Largest of each quarter. */
  readonly lateralMost: Int32Array;
  readonly outwardMost: Int32Array;
  readonly inwardMost: Int32Array;
  readonly left: KeptWall;
  readonly right: KeptWall;
  readonly strongestFrequency: Int32Array;
  readonly verticalAmplitude: Int32Array;
}

/** Room for what is read. */
export function emptyKept(quarterCount: number, leastClasses: LeastClasses): KeptMotion {
  const row = () => new Int32Array(quarterCount);
  const bins = () => new Int32Array(quarterCount * BINS_PER_QUARTER);
  const kept = () => ({ mask: new Uint16Array(quarterCount), steps: bins() });
  const histogram = () => ({
    topClass: new Int16Array(quarterCount),
    counts: new Uint32Array(quarterCount * HISTOGRAM_CLASSES),
  });
  const wall = () => ({
    velocityPeak: row(),
    accelerationPeak: row(),
    velocityMeanSquare: row(),
    accelerationMeanSquare: row(),
    edgeVelocity: histogram(),
    acceleration: histogram(),
  });
  return {
    leastClasses,
    approachLoose: kept(),
    approach: kept(),
    lift: kept(),
    sink: kept(),
    movedWalls: bins(),
    contactLift: bins(),
    lateralMost: row(),
    outwardMost: row(),
    inwardMost: row(),
    left: wall(),
    right: wall(),
    strongestFrequency: row(),
    verticalAmplitude: row(),
  };
}
