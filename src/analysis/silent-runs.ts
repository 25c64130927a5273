import type { Hertz } from '../units.js';
import { LEAST_SILENCE } from './motion.js';

/** A run of frames: the program's frame that it begins with, and how many they are. */
export type FrameRun = readonly [first: number, frames: number];

/**
 * Frames of a stretch of a program whose samples are exactly zero in both channels. Runs that touch
 * its ends go on in the stretches beside it.
 */
export interface SilentRuns {
  /** Frames of the program that it begins and ends with, the end not included. */
  readonly from: number;
  readonly until: number;
  /** Frames of silence that it begins and ends with; all of them where it holds nothing else. */
  readonly head: number;
  readonly tail: number;
  /** Shortest run that counts, frames. */
  readonly least: number;
  /** Those of at least `least` frames between them, in their order. */
  readonly inside: readonly FrameRun[];
}

/** Shortest run that counts, frames. */
export function leastSilentFrames(rate: Hertz): number {
  return Math.ceil(LEAST_SILENCE * rate);
}

/** Follows the silence of a program frame by frame. */
export class SilenceFollower {
  readonly #least: number;
  #from: number;
  #frame: number;
  #run = 0;
  /** null before the first frame that is no silence. */
  #head: number | null = null;
  #inside: FrameRun[] = [];

  /** @param firstFrame frame of the program that comes first */
  constructor(rate: Hertz, firstFrame: number) {
    this.#least = leastSilentFrames(rate);
    this.#from = firstFrame;
    this.#frame = firstFrame;
  }

  /** Begins a stretch here. */
  restart(): void {
    this.#from = this.#frame;
    this.#run = 0;
    this.#head = null;
    this.#inside = [];
  }

  hear(left: number, right: number): void {
    if (left !== 0 || right !== 0) {
      if (this.#head === null) this.#head = this.#run;
      else if (this.#run >= this.#least) this.#inside.push([this.#frame - this.#run, this.#run]);
      this.#run = 0;
    } else this.#run++;
    this.#frame++;
  }

  get runs(): SilentRuns {
    return {
      from: this.#from,
      until: this.#frame,
      head: this.#head ?? this.#run,
      tail: this.#run,
      least: this.#least,
      inside: this.#inside,
    };
  }
}

/** Two stretches of a program, the one after the other, as one. */
export function joinSilence(first: SilentRuns, next: SilentRuns): SilentRuns {
  const isSilent = (runs: SilentRuns): boolean => runs.head === runs.until - runs.from;
  const between = first.tail + next.head;
  const isInside = !isSilent(first) && !isSilent(next) && between >= first.least;
  return {
    from: first.from,
    until: next.until,
    head: isSilent(first) ? first.head + next.head : first.head,
    tail: isSilent(next) ? first.tail + next.tail : next.tail,
    least: first.least,
    inside: [
      ...first.inside,
      ...(isInside ? [[next.from - first.tail, between] as const] : []),
      ...next.inside,
    ],
  };
}
