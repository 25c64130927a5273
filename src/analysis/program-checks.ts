import type { ProgramChecks } from './motion.js';
import type { SampleFormat } from './sample-format.js';
import type { Stereo } from './stereo.js';

/** Fewest successive samples at full scale that count as clipping; common practice, no published source. */
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

/** Sums over a whole program; the plain definition. */
export function sumProgram(program: Stereo, format: SampleFormat): ProgramSums {
  const { left, right } = program;
  const full = fullScale(format);
  const sums: ProgramSums = {
    frames: left.length,
    sum: [0, 0],
    square: [0, 0],
    cross: 0,
    samplePeak: [0, 0],
    clippedRuns: 0,
    firstClipFrame: -1,
    identical: true,
  };
  const run = [0, 0];
  for (let frame = 0; frame < left.length; frame++) {
    const pair = [left[frame]!, right[frame]!];
    sums.cross += pair[0]! * pair[1]!;
    if (pair[0] !== pair[1]) sums.identical = false;
    for (const channel of [0, 1] as const) {
      const value = pair[channel]!;
      sums.sum[channel] += value;
      sums.square[channel] += value * value;
      sums.samplePeak[channel] = Math.max(sums.samplePeak[channel], Math.abs(value));
      run[channel] = Math.abs(value) >= full ? run[channel]! + 1 : 0;
      if (run[channel] === CLIPPED_RUN) {
        if (sums.clippedRuns === 0) sums.firstClipFrame = frame - CLIPPED_RUN + 1;
        sums.clippedRuns++;
      }
    }
  }
  return sums;
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
    ...measured,
  };
}
