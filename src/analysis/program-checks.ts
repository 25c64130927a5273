import type { ProgramChecks } from './motion.js';
import type { SampleFormat } from './sample-format.js';
import { mapStereo, type Stereo } from './stereo.js';

/**
 * Fewest successive samples at full scale that count as clipping; in float they must be equal too,
 * at a magnitude of at least 1. Common practice, no published source.
 */
export const CLIPPED_RUN = 3;

/** Sums over frames of the source's own samples; [left, right]. */
export interface ProgramSums {
  frames: number;
  sum: [number, number];
  square: [number, number];
  cross: number;
  samplePeak: [number, number];
  clippedRuns: number;
  /** Frame of the program at which the first of them begins; −1 without one. */
  firstClipFrame: number;
  identical: boolean;
}

function noSums(): ProgramSums {
  return {
    frames: 0,
    sum: [0, 0],
    square: [0, 0],
    cross: 0,
    samplePeak: [0, 0],
    clippedRuns: 0,
    firstClipFrame: -1,
    identical: true,
  };
}

/** Magnitude from which a sample is at full scale: the highest code, or 1 in float. */
export function fullScale(format: SampleFormat): number {
  return format.encoding === 'float' ? 1 : 1 - 2 ** (1 - format.bitDepth);
}

/** Adds up a program block by block. */
export class ProgramSummer {
  #sums = noSums();
  readonly #full: number;
  /** Float goes on over full scale: what is clipped there shows as a plateau alone. */
  readonly #onlyPlateaus: boolean;
  readonly #run: [number, number] = [0, 0];
  readonly #before: [number, number] = [0, 0];
  /** Frame of the program that comes next. */
  #frame: number;

  /** @param firstFrame frame of the program that is pushed first */
  constructor(format: SampleFormat, firstFrame = 0) {
    this.#full = fullScale(format);
    this.#onlyPlateaus = format.encoding === 'float';
    this.#frame = firstFrame;
  }

  get sums(): ProgramSums {
    return this.#sums;
  }

  /** Begins to count here; a run at full scale that has begun before goes on. */
  restart(): void {
    this.#sums = noSums();
  }

  push({ left, right }: Stereo): void {
    const sums = this.#sums;
    for (let frame = 0; frame < left.length; frame++) {
      sums.cross += left[frame]! * right[frame]!;
      if (left[frame] !== right[frame]) sums.identical = false;
      this.#add(0, left[frame]!);
      this.#add(1, right[frame]!);
      sums.frames++;
      this.#frame++;
    }
  }

  #add(channel: 0 | 1, value: number): void {
    const sums = this.#sums;
    sums.sum[channel] += value;
    sums.square[channel] += value * value;
    sums.samplePeak[channel] = Math.max(sums.samplePeak[channel], Math.abs(value));
    this.#run[channel] = this.#runWith(channel, value);
    this.#before[channel] = value;
    if (this.#run[channel] !== CLIPPED_RUN) return;
    if (sums.clippedRuns === 0) sums.firstClipFrame = this.#frame - CLIPPED_RUN + 1;
    sums.clippedRuns++;
  }

  /** Length of the run at full scale that a sample ends; 0 under full scale. */
  #runWith(channel: 0 | 1, value: number): number {
    if (Math.abs(value) < this.#full) return 0;
    return this.#onlyPlateaus && value !== this.#before[channel] ? 1 : this.#run[channel] + 1;
  }
}

/**
 * Sums over a stretch of a program in memory.
 * @param heard frames before it, over which its runs at full scale may have begun
 * @param firstFrame frame of the program that `program` begins at
 */
export function sumProgram(
  program: Stereo,
  format: SampleFormat,
  heard = 0,
  firstFrame = 0,
): ProgramSums {
  const summer = new ProgramSummer(format, firstFrame);
  summer.push(mapStereo(program, (channel) => channel.subarray(0, heard)));
  summer.restart();
  summer.push(mapStereo(program, (channel) => channel.subarray(heard)));
  return summer.sums;
}

/** Sums of two stretches of a program, the one after the other. */
export function addSums(first: ProgramSums, next: ProgramSums): ProgramSums {
  const added = (a: [number, number], b: [number, number]): [number, number] => [
    a[0] + b[0],
    a[1] + b[1],
  ];
  return {
    frames: first.frames + next.frames,
    sum: added(first.sum, next.sum),
    square: added(first.square, next.square),
    cross: first.cross + next.cross,
    samplePeak: [
      Math.max(first.samplePeak[0], next.samplePeak[0]),
      Math.max(first.samplePeak[1], next.samplePeak[1]),
    ],
    clippedRuns: first.clippedRuns + next.clippedRuns,
    firstClipFrame: first.firstClipFrame < 0 ? next.firstClipFrame : first.firstClipFrame,
    identical: first.identical && next.identical,
  };
}

/** What the sums do not hold. */
interface Measured {
  readonly truePeak: readonly [number, number];
  readonly loudnessLufs: number | null;
  readonly ultrasonicMeanSquare: number;
}

/** Means and correlation out of the sums. */
export function programChecks(
  sums: ProgramSums,
  format: SampleFormat,
  measured: Measured,
): ProgramChecks {
  const { frames, sum, square } = sums;
  const product = Math.sqrt(square[0] * square[1]);
  return {
    mean: [sum[0] / frames, sum[1] / frames],
    meanSquare: [square[0] / frames, square[1] / frames],
    samplePeak: sums.samplePeak,
    clippedRuns: sums.clippedRuns,
    firstClipSeconds: sums.firstClipFrame < 0 ? null : sums.firstClipFrame / format.sampleRate,
    correlation: product > 0 ? sums.cross / product : 0,
    identicalChannels: format.channels === 2 && sums.identical,
    truePeak: measured.truePeak,
    loudnessLufs: measured.loudnessLufs,
    ultrasonicMeanSquare: measured.ultrasonicMeanSquare,
  };
}
