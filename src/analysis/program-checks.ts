import type { SampleFormat } from './sample-format.js';
import { joinSilence, SilenceFollower, type SilentRuns } from './silent-runs.js';
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
  /** The longest of them, all of it though it may have begun before these frames. */
  longestClip: LongestClip;
  identical: boolean;
  silence: SilentRuns;
}

/** Frame of the program that a run begins at, and how many it holds; −1 and 0 without one. */
export interface LongestClip {
  readonly firstFrame: number;
  readonly frames: number;
}

export const NO_CLIP: LongestClip = { firstFrame: -1, frames: 0 };

/** The longer of two runs, the first of equals. */
export function longerClip(one: LongestClip, other: LongestClip): LongestClip {
  if (one.frames !== other.frames) return other.frames > one.frames ? other : one;
  return other.firstFrame < one.firstFrame ? other : one;
}

function noSums(): Omit<ProgramSums, 'silence'> {
  return {
    frames: 0,
    sum: [0, 0],
    square: [0, 0],
    cross: 0,
    samplePeak: [0, 0],
    clippedRuns: 0,
    firstClipFrame: -1,
    longestClip: NO_CLIP,
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
  readonly #silence: SilenceFollower;
  /** Frame of the program that comes next. */
  #frame: number;

  /** @param firstFrame frame of the program that is pushed first */
  constructor(format: SampleFormat, firstFrame = 0) {
    this.#full = fullScale(format);
    this.#onlyPlateaus = format.encoding === 'float';
    this.#frame = firstFrame;
    this.#silence = new SilenceFollower(format.sampleRate, firstFrame);
  }

  get sums(): ProgramSums {
    return { ...this.#sums, silence: this.#silence.runs };
  }

  /** Begins to count here; a run at full scale that has begun before goes on. */
  restart(): void {
    this.#sums = noSums();
    this.#silence.restart();
  }

  push({ left, right }: Stereo): void {
    const sums = this.#sums;
    for (let frame = 0; frame < left.length; frame++) {
      sums.cross += left[frame]! * right[frame]!;
      if (left[frame] !== right[frame]) sums.identical = false;
      this.#add(0, left[frame]!);
      this.#add(1, right[frame]!);
      this.#silence.hear(left[frame]!, right[frame]!);
      sums.frames++;
      this.#frame++;
    }
  }

  #add(channel: 0 | 1, value: number): void {
    const sums = this.#sums;
    sums.sum[channel] += value;
    sums.square[channel] += value * value;
    sums.samplePeak[channel] = Math.max(sums.samplePeak[channel], Math.abs(value));
    const run = this.#runWith(channel, value);
    this.#run[channel] = run;
    this.#before[channel] = value;
    if (run < CLIPPED_RUN) return;
    const longest = { firstFrame: this.#frame - run + 1, frames: run };
    sums.longestClip = longerClip(sums.longestClip, longest);
    if (run > CLIPPED_RUN) return;
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
    longestClip: longerClip(first.longestClip, next.longestClip),
    identical: first.identical && next.identical,
    silence: joinSilence(first.silence, next.silence),
  };
}
