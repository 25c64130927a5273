import {
  begun,
  type MotionSummary,
  QUARTERS_PER_TURN,
  type WallMotion,
} from '../analysis/motion.js';
import type { Settings } from '../settings.js';
import { type RankedHistogram, rankedHistogram } from './histogram-share.js';
import { type MovedWall, movedWall } from './moved-wall.js';
import { paddedMaxima, padRow } from './quarter-maxima.js';

/** Rank of one wall's magnitudes, for shares of time. */
export interface WallHistograms {
  readonly edgeVelocity: RankedHistogram;
  readonly acceleration: RankedHistogram;
}

/** What of a planned side hangs on its motion and its silent turns alone. */
export interface PlannedRows {
  /** Bin rows, m. */
  readonly approach: Float64Array;
  readonly approachLoose: Float64Array;
  readonly lift: Float64Array;
  readonly sink: Float64Array;
  /** Largest of each quarter, m. */
  readonly approachMax: Float64Array;
  readonly approachLooseMax: Float64Array;
  readonly liftMax: Float64Array;
  readonly sinkMax: Float64Array;
  readonly lateralMax: Float64Array;
  readonly outwardMax: Float64Array;
  readonly inwardMax: Float64Array;
  /** Mean u̇² of the two walls per quarter, (m/s)². */
  readonly velocityPower: Float64Array;
  /** Quarters count as in the motion summary. */
  readonly left: WallHistograms;
  readonly right: WallHistograms;
  /** Which wall moves, and how, where the groove of a bin faces that of a turn before. */
  readonly movedWallAt: MovedWallAt;
}

/** @param bin of the motion summary */
export type MovedWallAt = (bin: number) => MovedWall;

/**
 * @param movedWallAt what is known of the motion beside the summary's rows
 * @param silentQuarters that lie before and after each bin row in its memory
 */
export function plannedRows(
  motion: MotionSummary,
  settings: Pick<Settings, 'silentTurns'>,
  movedWallAt: MovedWallAt = (bin) => movedWall(motion, bin),
  silentQuarters = 0,
): PlannedRows {
  const { lead, count } = extent(motion, settings);
  const padded = (row: Float64Array) => padRow(row, lead, count, silentQuarters);
  const maxima = (row: Float64Array) => paddedMaxima(row, lead, count);
  return {
    approach: padded(motion.approach),
    approachLoose: padded(motion.approachLoose),
    lift: padded(motion.lift),
    sink: padded(motion.sink),
    approachMax: maxima(motion.approach),
    approachLooseMax: maxima(motion.approachLoose),
    liftMax: maxima(motion.lift),
    sinkMax: maxima(motion.sink),
    lateralMax: maxima(motion.lateral),
    outwardMax: maxima(motion.outward),
    inwardMax: maxima(motion.inward),
    velocityPower: velocityPower(motion, lead, count),
    left: wallHistograms(motion.left),
    right: wallHistograms(motion.right),
    movedWallAt,
  };
}

/** Quarters before the program, its turns, and all quarters that are planned. */
export function extent(motion: MotionSummary, { silentTurns }: Pick<Settings, 'silentTurns'>) {
  const lead = QUARTERS_PER_TURN * silentTurns;
  const turns = motion.durationSeconds / motion.turnSeconds;
  return { lead, turns, count: QUARTERS_PER_TURN * begun(turns) + 2 * lead };
}

function wallHistograms(wall: WallMotion): WallHistograms {
  const edgePeaks = Float64Array.from(wall.velocityPeak);
  for (let quarter = 0; quarter < edgePeaks.length; quarter++) edgePeaks[quarter]! *= Math.SQRT2;
  return {
    edgeVelocity: rankedHistogram(wall.edgeVelocityHistogram, edgePeaks),
    acceleration: rankedHistogram(wall.accelerationHistogram, wall.accelerationPeak),
  };
}

function velocityPower({ left, right }: MotionSummary, lead: number, count: number): Float64Array {
  const power = new Float64Array(count);
  for (let quarter = 0; quarter < left.velocityMeanSquare.length; quarter++) {
    const both = left.velocityMeanSquare[quarter]! + right.velocityMeanSquare[quarter]!;
    power[quarter + lead] = both / 2;
  }
  return power;
}
