import type { ProgramChecks } from './motion.js';
import type { SampleFormat } from './sample-format.js';
import type { Stereo } from './stereo.js';

/**
 * Fewest successive samples at full scale that count as clipping; in float they must be equal too,
 * at a magnitude of at least 1. Common practice, no published source.
 */
export const CLIPPED_RUN = 3;

/** Running sums over the source's own samples; [left, right]. */
export interface ProgramSums {
  frames: number;
  sum: [number, number];
  square: [number, number];
  cross: number;
  samplePeak: [number, number];
  clippedRuns: number;
  /** −1 without one. */
  firstClipFrame: number;
  identical: boolean;
}

/** Magnitude from which a sample is at full scale: the highest code, or 1 in float. */
export function fullScale(format: SampleFormat): number {
  return format.encoding === 'float' ? 1 : 1 - 2 ** (1 - format.bitDepth);
}

/** Adds up a program block by block. */
export class ProgramSummer {
  readonly sums: ProgramSums = {
    frames: 0,
    sum: [0, 0],
    square: [0, 0],
    cross: 0,
    samplePeak: [0, 0],
    clippedRuns: 0,
    firstClipFrame: -1,
    identical: true,
  };
  readonly #full: number;
  /** Float goes on over full scale: what is clipped there shows as a plateau alone. */
  readonly #onlyPlateaus: boolean;
  readonly #run: [number, number] = [0, 0];
  readonly #before: [number, number] = [0, 0];

  constructor(format: SampleFormat) {
    this.#full = fullScale(format);
    this.#onlyPlateaus = format.encoding === 'float';
  }

  push({ left, right }: Stereo): void {
    const { sums } = this;
    for (let frame = 0; frame < left.length; frame++) {
      sums.cross += left[frame]! * right[frame]!;
      if (left[frame] !== right[frame]) sums.identical = false;
      this.#add(0, left[frame]!);
      this.#add(1, right[frame]!);
      sums.frames++;
    }
  }

  #add(channel: 0 | 1, value: number): void {
    const { sums } = this;
    sums.sum[channel] += value;
    sums.square[channel] += value * value;
    sums.samplePeak[channel] = Math.max(sums.samplePeak[channel], Math.abs(value));
    this.#run[channel] = this.#runWith(channel, value);
    this.#before[channel] = value;
    if (this.#run[channel] !== CLIPPED_RUN) return;
    if (sums.clippedRuns === 0) sums.firstClipFrame = sums.frames - CLIPPED_RUN + 1;
    sums.clippedRuns++;
  }

  /** Length of the run at full scale that a sample ends; 0 under full scale. */
  #runWith(channel: 0 | 1, value: number): number {
    if (Math.abs(value) < this.#full) return 0;
    return this.#onlyPlateaus && value !== this.#before[channel] ? 1 : this.#run[channel] + 1;
  }
}

/** Sums over a whole program. */
export function sumProgram(program: Stereo, format: SampleFormat): ProgramSums {
  const summer = new ProgramSummer(format);
  summer.push(program);
  return summer.sums;
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
