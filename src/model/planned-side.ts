import {
  BINS_PER_QUARTER,
  begun,
  type MotionSummary,
  QUARTERS_PER_TURN,
  type WallMotion,
} from '../analysis/motion.js';
import type { Settings } from '../settings.js';
import type { Metres, Seconds } from '../units.js';
import { easedBase } from './eased-base.js';
import { facingHalfWidths } from './facing-half-widths.js';
import { handColumn } from './hand-columns.js';
import { type CumulativeHistogram, cumulativeHistogram } from './histogram-share.js';
import { padRow, quarterMaxima } from './quarter-maxima.js';
import { type HandSettings, NOTHING_BY_HAND } from './side-plan-input.js';

/** Rank of one wall's magnitudes, for shares of time. */
export interface WallHistograms {
  readonly edgeVelocity: CumulativeHistogram;
  readonly acceleration: CumulativeHistogram;
}

/**
 * A program's motion over the quarters that are planned, at level 0 dB: the motion summary with
 * `silentTurns` before and after it. Index 0 is the first planned quarter, −4·silentTurns of the
 * program; bins count from its start. Made once a side; every level is planned from it.
 */
export interface PlannedSide {
  readonly motion: MotionSummary;
  readonly settings: Settings;
  readonly hand: HandSettings;
  /** Index of the quarter that begins with the program: 4·silentTurns. */
  readonly lead: number;
  /** Planned quarters. */
  readonly count: number;
  /** Quarters that the program touches. */
  readonly programCount: number;
  readonly turns: number;
  readonly quarterSeconds: Seconds;
  /** The pitch that no plan goes under, per quarter, before any slew, m per turn. */
  readonly basePitch: Float64Array;
  /** The unmodulated half-width that is asked for, per quarter, before any slew, m. */
  readonly baseHalfWidth: Float64Array;
  /** The same as it is cut, at the quarters' starts and the end of the last: with its slews. */
  readonly baseNodes: Float64Array;
  /** h(t) + h(t − T) of it, likewise. */
  readonly baseFacing: Float64Array;
  /** Bin rows, m. */
  readonly approach: Float64Array;
  readonly approachLoose: Float64Array;
  readonly lift: Float64Array;
  readonly sink: Float64Array;
  /** Largest of each quarter, m. */
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
}

export function plannedSide(
  motion: MotionSummary,
  settings: Settings,
  hand: HandSettings = NOTHING_BY_HAND,
): PlannedSide {
  const lead = QUARTERS_PER_TURN * settings.silentTurns;
  const turns = motion.durationSeconds / motion.turnSeconds;
  const count = QUARTERS_PER_TURN * begun(turns) + 2 * lead;
  const padded = (row: Float64Array) => padRow(row, lead, count);
  const maxima = (row: Float64Array) => quarterMaxima(padded(row));
  const grid = { lead, count, quarterSeconds: motion.turnSeconds / QUARTERS_PER_TURN };
  const pitches = hand.basePitch.map(({ fromSeconds, pitch }) => ({ fromSeconds, value: pitch }));
  const widths = hand.baseWidth.map(({ fromSeconds, width }) => ({
    fromSeconds,
    value: width / 2,
  }));
  const baseHalfWidth = handColumn(grid, widths, settings.baseWidth / 2);
  const baseNodes = easedBase(baseHalfWidth, settings);
  return {
    motion,
    settings,
    hand,
    lead,
    count,
    programCount: begun(QUARTERS_PER_TURN * turns),
    turns,
    quarterSeconds: grid.quarterSeconds,
    basePitch: handColumn(grid, pitches, settings.basePitch),
    baseHalfWidth,
    baseNodes,
    baseFacing: facingHalfWidths(baseNodes, baseHalfWidth[0]!),
    approach: padded(motion.approach),
    approachLoose: padded(motion.approachLoose),
    lift: padded(motion.lift),
    sink: padded(motion.sink),
    liftMax: maxima(motion.lift),
    sinkMax: maxima(motion.sink),
    lateralMax: maxima(motion.lateral),
    outwardMax: maxima(motion.outward),
    inwardMax: maxima(motion.inward),
    velocityPower: velocityPower(motion, lead, count),
    left: wallHistograms(motion.left),
    right: wallHistograms(motion.right),
  };
}

function wallHistograms(wall: WallMotion): WallHistograms {
  const edgePeak = wall.velocityPeak.map((peak) => Math.SQRT2 * peak);
  return {
    edgeVelocity: cumulativeHistogram(wall.edgeVelocityHistogram, edgePeak),
    acceleration: cumulativeHistogram(wall.accelerationHistogram, wall.accelerationPeak),
  };
}

function velocityPower({ left, right }: MotionSummary, lead: number, count: number): Float64Array {
  const power = new Float64Array(count);
  for (const [quarter, ofLeft] of left.velocityMeanSquare.entries()) {
    power[quarter + lead] = (ofLeft + right.velocityMeanSquare[quarter]!) / 2;
  }
  return power;
}

/** Program time at which planned quarter `index` begins. */
export function quarterStart(side: PlannedSide, index: number): Seconds {
  return (index - side.lead) * side.quarterSeconds;
}

/** Program time at which a bin of the planned quarters begins. */
export function binStart(side: PlannedSide, bin: number): Seconds {
  return (bin / BINS_PER_QUARTER - side.lead) * side.quarterSeconds;
}

/** What a plan has to leave besides the motion: 2·depthTolerance + pitchTolerance. */
export function landTolerance({ depthTolerance, pitchTolerance }: Settings): Metres {
  return 2 * depthTolerance + pitchTolerance;
}
