import type { Hertz } from '../../units.js';
import { LOW_BAND_DECIMATION } from '../decimate.js';
import {
  ACCELERATION_CLASSES,
  COUNTING_CLASSES,
  fileQuarter,
  ROOT_TWO_CLASSES,
} from '../histogram.js';
import type { Jump } from '../jumps.js';
import { emptyLowBand, fileLowBand } from '../low-band-figures.js';
import { WINDOW_FRAMES } from '../low-windows.js';
import { BINS_PER_QUARTER, type LowBand, type WallMotion } from '../motion.js';
import { BIN_COLUMNS, type BinMaxima } from '../part-motion.js';
import type { FrameRun } from '../silent-runs.js';
import { emptyWall } from '../wall-rows.js';
import { numbersAt } from './configure.js';
import type { Kernel } from './load-kernel.js';

/** Numbers per quarter: two peaks and two mean squares of two walls. */
const FIGURES = 8;

/** What has been taken from a kernel so far, growing towards a part's motion. */
export interface Collected {
  readonly bins: BinMaxima;
  readonly left: WallMotion;
  readonly right: WallMotion;
  /** K-weighted power of every 100 ms: left, right, left … */
  readonly stepPowers: number[];
  readonly lowBand: LowBand;
  binCount: number;
  quarterCount: number;
  /** Quarters whose low band is there. */
  lowCount: number;
}

export function emptyCollection(quarterCount: number): Collected {
  const row = (): Float64Array => new Float64Array(quarterCount * BINS_PER_QUARTER);
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
    left: emptyWall(quarterCount),
    right: emptyWall(quarterCount),
    stepPowers: [],
    lowBand: emptyLowBand(quarterCount),
    binCount: 0,
    quarterCount: 0,
    lowCount: 0,
  };
}

/**
 * Takes what the kernel has completed; bins and quarters beyond the collection's are let go.
 * @param rate of the motion
 */
export function collect(kernel: Kernel, collected: Collected, rate: Hertz): void {
  collectBins(kernel, collected);
  collectQuarters(kernel, collected);
  collectLowBand(kernel, collected, rate);
  collected.stepPowers.push(
    ...numbersAt(kernel, kernel.stepPowers.value, 2 * kernel.stepCount.value),
  );
  kernel.takeSteps();
}

function collectBins(kernel: Kernel, collected: Collected): void {
  const count = kernel.binCount.value;
  const maxima = numbersAt(kernel, kernel.binMaxima.value, count * BIN_COLUMNS.length);
  for (let bin = 0; bin < count; bin++) {
    for (const [column, name] of BIN_COLUMNS.entries()) {
      collected.bins[name][collected.binCount + bin] = maxima[bin * BIN_COLUMNS.length + column]!;
    }
  }
  collected.binCount += count;
  kernel.takeBins();
}

function collectQuarters(kernel: Kernel, collected: Collected): void {
  const count = kernel.quarterCount.value;
  const figures = numbersAt(kernel, kernel.quarterFigures.value, count * FIGURES);
  const room = collected.left.velocityPeak.length;
  for (let quarter = 0; quarter < count && collected.quarterCount < room; quarter++) {
    for (const [side, wall] of [collected.left, collected.right].entries()) {
      const at = quarter * FIGURES + side;
      wall.velocityPeak[collected.quarterCount] = figures[at]!;
      wall.accelerationPeak[collected.quarterCount] = figures[at + 2]!;
      wall.velocityMeanSquare[collected.quarterCount] = figures[at + 4]!;
      wall.accelerationMeanSquare[collected.quarterCount] = figures[at + 6]!;
      fileCounts(kernel, 4 * quarter + side, wall, collected.quarterCount);
    }
    collected.quarterCount++;
  }
  if (count > 0) kernel.takeQuarters();
}

function fileCounts(kernel: Kernel, row: number, wall: WallMotion, quarter: number): void {
  const counts = (at: number): Uint32Array =>
    new Uint32Array(
      kernel.memory.buffer,
      kernel.quarterCounts.value + at * COUNTING_CLASSES * 4,
      COUNTING_CLASSES,
    );
  fileQuarter(wall.edgeVelocityHistogram, quarter, counts(row), ROOT_TWO_CLASSES);
  fileQuarter(wall.accelerationHistogram, quarter, counts(row + 2), ACCELERATION_CLASSES);
}

/** Both walls' powers, the two parts of their product, the strongest bin. */
const LOW_NUMBERS = 5;

function collectLowBand(kernel: Kernel, collected: Collected, rate: Hertz): void {
  const { lowBand } = collected;
  const room = lowBand.phase.length - collected.lowCount;
  const count = Math.min(kernel.lowQuarterCount.value, room);
  const numbers = numbersAt(kernel, kernel.lowQuarters.value, count * LOW_NUMBERS);
  for (let at = 0; at < numbers.length; at += LOW_NUMBERS) {
    fileLowBand(lowBand, collected.lowCount, {
      left: numbers[at]!,
      right: numbers[at + 1]!,
      crossRe: numbers[at + 2]!,
      crossIm: numbers[at + 3]!,
    });
    lowBand.strongestFrequency[collected.lowCount] =
      numbers[at + 4]! * (rate / LOW_BAND_DECIMATION / WINDOW_FRAMES);
    collected.lowCount++;
  }
  kernel.takeLowQuarters();
}

/** Frame, channel, difference and the largest around it. */
const JUMP_NUMBERS = 4;

/**
 * The jumps since the last push.
 * @param firstFrame frame of the program that the kernel was given first
 */
export function jumpsOf(kernel: Kernel, firstFrame: number): Jump[] {
  const count = kernel.jumpCount.value;
  const numbers = numbersAt(kernel, kernel.jumps.value, JUMP_NUMBERS * count);
  return Array.from({ length: count }, (_, jump) => {
    const [frame, channel, difference, around] = numbers.subarray(JUMP_NUMBERS * jump);
    return {
      frame: firstFrame + frame!,
      channel: channel === 0 ? 0 : 1,
      difference: difference!,
      around: around!,
    };
  });
}

/** The runs of silence that have ended since the last push, likewise. */
export function silentRunsOf(kernel: Kernel, firstFrame: number): FrameRun[] {
  const count = kernel.silentCount.value;
  const numbers = numbersAt(kernel, kernel.silentRuns.value, 2 * count);
  return Array.from({ length: count }, (_, run) => [
    firstFrame + numbers[2 * run]!,
    numbers[2 * run + 1]!,
  ]);
}
