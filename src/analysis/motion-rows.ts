import type { Settings } from '../settings.js';
import { emptyLowBand } from './low-band-figures.js';
import {
  BINS_PER_QUARTER,
  HISTOGRAM_CLASSES,
  type Histogram,
  type LowBand,
  QUARTERS_PER_TURN,
  type WallMotion,
} from './motion.js';
import { BIN_COLUMNS, type BinMaxima, type MotionRows } from './part-motion.js';
import type { Part } from './parts.js';
import { type RowMemory, sharedMemory } from './row-memory.js';
import { emptyWall } from './wall-rows.js';

/** Rows of a whole side. */
export interface SideRows extends MotionRows {
  /** Quarters of silence that lie before and after each bin row in its memory. */
  readonly silentQuarters: number;
}

/**
 * Rows over so many quarters, to be filled in.
 * @param silentQuarters that lie before and after each bin row in its memory
 */
export function emptyRows(quarterCount: number, memory: RowMemory, silentQuarters = 0): MotionRows {
  const bins = quarterCount * BINS_PER_QUARTER;
  const silent = silentQuarters * BINS_PER_QUARTER;
  const row = (): Float64Array =>
    new Float64Array(memory(8 * (bins + 2 * silent)), 8 * silent, bins);
  return {
    bins: {
      approach: row(),
      approachLoose: row(),
      lift: row(),
      sink: row(),
      lateral: row(),
      outward: row(),
      inward: row(),
    },
    left: emptyWall(quarterCount, memory),
    right: emptyWall(quarterCount, memory),
    lowBand: emptyLowBand(quarterCount, memory),
  };
}

/**
 * Rows of a side, into which its parts are measured by whichever threads: so they are there once,
 * and need not be joined. The silent turns that are planned around it lie around them.
 */
export function rowsOfSide(
  parts: readonly Part[],
  { silentTurns }: Pick<Settings, 'silentTurns'>,
): SideRows {
  const silentQuarters = QUARTERS_PER_TURN * silentTurns;
  const rows = emptyRows(parts.at(-1)?.endQuarter ?? 0, sharedMemory, silentQuarters);
  return { ...rows, silentQuarters };
}

/** The same memory over the quarters from `first` up to `end`. */
export function rowsBetween(rows: MotionRows, first: number, end: number): MotionRows {
  const quarters = (row: Float64Array) => row.subarray(first, end);
  return {
    bins: binsBetween(rows.bins, first * BINS_PER_QUARTER, end * BINS_PER_QUARTER),
    left: wallBetween(rows.left, first, end),
    right: wallBetween(rows.right, first, end),
    lowBand: lowBandBetween(rows.lowBand, quarters),
  };
}

/** Copies rows into others, but for those that are the same. */
export function setRows(rows: MotionRows, from: MotionRows): void {
  const columns = columnsOf(from);
  for (const [at, column] of columnsOf(rows).entries()) {
    const own = columns[at]!;
    if (own !== column) column.set(own);
  }
}

type Column = Float64Array | Int16Array | Uint32Array;

function columnsOf({ bins, left, right, lowBand }: MotionRows): readonly Column[] {
  return [
    ...BIN_COLUMNS.map((name) => bins[name]),
    ...wallColumns(left),
    ...wallColumns(right),
    lowBand.correlation,
    lowBand.phase,
    lowBand.verticalShare,
    lowBand.strongestFrequency,
    lowBand.verticalAmplitude,
    lowBand.lateralAmplitude,
  ];
}

function wallColumns(wall: WallMotion): readonly Column[] {
  return [
    wall.velocityPeak,
    wall.accelerationPeak,
    wall.velocityMeanSquare,
    wall.accelerationMeanSquare,
    wall.edgeVelocityHistogram.topClass,
    wall.edgeVelocityHistogram.counts,
    wall.accelerationHistogram.topClass,
    wall.accelerationHistogram.counts,
  ];
}

function binsBetween(bins: BinMaxima, first: number, end: number): BinMaxima {
  return {
    approach: bins.approach.subarray(first, end),
    approachLoose: bins.approachLoose.subarray(first, end),
    lift: bins.lift.subarray(first, end),
    sink: bins.sink.subarray(first, end),
    lateral: bins.lateral.subarray(first, end),
    outward: bins.outward.subarray(first, end),
    inward: bins.inward.subarray(first, end),
  };
}

function wallBetween(wall: WallMotion, first: number, end: number): WallMotion {
  return {
    velocityPeak: wall.velocityPeak.subarray(first, end),
    accelerationPeak: wall.accelerationPeak.subarray(first, end),
    velocityMeanSquare: wall.velocityMeanSquare.subarray(first, end),
    accelerationMeanSquare: wall.accelerationMeanSquare.subarray(first, end),
    edgeVelocityHistogram: histogramBetween(wall.edgeVelocityHistogram, first, end),
    accelerationHistogram: histogramBetween(wall.accelerationHistogram, first, end),
  };
}

function histogramBetween({ topClass, counts }: Histogram, first: number, end: number): Histogram {
  return {
    topClass: topClass.subarray(first, end),
    counts: counts.subarray(first * HISTOGRAM_CLASSES, end * HISTOGRAM_CLASSES),
  };
}

function lowBandBetween(lowBand: LowBand, quarters: (row: Float64Array) => Float64Array): LowBand {
  return {
    correlation: quarters(lowBand.correlation),
    phase: quarters(lowBand.phase),
    verticalShare: quarters(lowBand.verticalShare),
    strongestFrequency: quarters(lowBand.strongestFrequency),
    verticalAmplitude: quarters(lowBand.verticalAmplitude),
    lateralAmplitude: quarters(lowBand.lateralAmplitude),
  };
}
