import type { Hertz } from '../../units.js';
import { LOW_BAND_DECIMATION } from '../decimate.js';
import type { Jump } from '../jumps.js';
import { fileLowBand } from '../low-band-figures.js';
import { WINDOW_FRAMES } from '../low-windows.js';
import { HISTOGRAM_CLASSES, type Histogram } from '../motion.js';
import { BIN_COLUMNS, type MotionRows } from '../part-motion.js';
import type { FrameRun } from '../silent-runs.js';
import { numbersAt } from './configure.js';
import type { Kernel } from './load-kernel.js';

/** What has been taken from a kernel so far, growing towards a part's motion. */
export interface Collected extends MotionRows {
  /** K-weighted power of every 100 ms: left, right, left … */
  readonly stepPowers: number[];
  binCount: number;
  quarterCount: number;
  /** Quarters whose low band is there. */
  lowCount: number;
}

/** Nothing so far. @param rows a part's, to be filled in */
export function emptyCollection(rows: MotionRows): Collected {
  return { ...rows, stepPowers: [], binCount: 0, quarterCount: 0, lowCount: 0 };
}

/**
 * Bins that a kernel may have completed before they must be collected: it has room for those of one
 * push more.
 */
export const MANY_BINS = 256;

/**
 * Takes what the kernel has completed; bins and quarters beyond the collection's are let go.
 * @param rate of the motion
 */
export function collect(kernel: Kernel, collected: Collected, rate: Hertz): void {
  kernel.handOver();
  collectBins(kernel, collected);
  collectQuarters(kernel, collected);
  collectLowBand(kernel, collected, rate);
  collected.stepPowers.push(
    ...numbersAt(kernel, kernel.stepPowers.value, 2 * kernel.stepCount.value),
  );
  kernel.takeSteps();
}

function collectBins(kernel: Kernel, collected: Collected): void {
  const rows = kernel.handedBins.value;
  const { bins, binCount } = collected;
  const count = Math.min(rows, bins.lift.length - binCount);
  for (const [column, name] of BIN_COLUMNS.entries()) {
    const at = kernel.binColumns.value + 8 * column * rows;
    bins[name].set(numbersAt(kernel, at, count), binCount);
  }
  collected.binCount += count;
}

function collectQuarters(kernel: Kernel, collected: Collected): void {
  const rows = kernel.handedQuarters.value;
  const first = collected.quarterCount;
  const count = Math.min(rows, collected.left.velocityPeak.length - first);
  for (const [side, wall] of [collected.left, collected.right].entries()) {
    const figures = [
      wall.velocityPeak,
      wall.accelerationPeak,
      wall.velocityMeanSquare,
      wall.accelerationMeanSquare,
    ];
    for (const [figure, row] of figures.entries()) {
      const at = kernel.figureColumns.value + 8 * (2 * figure + side) * rows;
      row.set(numbersAt(kernel, at, count), first);
    }
    const histograms = [wall.edgeVelocityHistogram, wall.accelerationHistogram];
    for (const [quantity, histogram] of histograms.entries()) {
      collectHistogram(kernel, histogram, (2 * quantity + side) * rows, first, count);
    }
  }
  collected.quarterCount += count;
}

/** @param place where the histogram's quarters begin in the kernel's columns */
function collectHistogram(
  { memory, topColumns, countColumns }: Kernel,
  histogram: Histogram,
  place: number,
  first: number,
  count: number,
): void {
  const tops = new Int16Array(memory.buffer, topColumns.value + 2 * place, count);
  histogram.topClass.set(tops, first);
  const at = countColumns.value + 4 * HISTOGRAM_CLASSES * place;
  const counts = new Uint32Array(memory.buffer, at, HISTOGRAM_CLASSES * count);
  histogram.counts.set(counts, HISTOGRAM_CLASSES * first);
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
