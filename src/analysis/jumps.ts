import { LEAST_JUMP } from './motion.js';
import type { Stereo } from './stereo.js';

/** Least |second difference| that counts, full scale 1. */
export const LEAST_DIFFERENCE = 2 * LEAST_JUMP;
/**
 * How many times the second differences around it a jump's must be, 15.6 dB. That a click shows as
 * a peak of what neighbours do not predict, over the level of that around it, is how clicks are
 * found in restoration (Godsill and Rayner, Digital Audio Restoration, 1998, chapter 5, from
 * memory); the factor is our own: recordings of drums, voices and machines keep under it.
 */
const ISOLATION = 6;
/** Frames around it that it is compared with, on either side. */
const REACH = 32;
/** Frames on either side that may be part of the jump itself. */
const NEAR = 2;
/**
 * Share of it that a second difference beside it has at least: half in a single sample, all of it in
 * a step. Where a tone begins at once or a triangle turns, the slope alone changes, and it has none.
 */
const BESIDE = 1 / 3;

/** A sample that its neighbours do not explain. */
export interface Jump {
  /** Frame of the program. */
  readonly frame: number;
  readonly channel: 0 | 1;
  /** |x[n − 1] − 2·x[n] + x[n + 1]|, full scale 1: twice how far it lies from their middle. */
  readonly difference: number;
  /** The largest of these in the frames around it. */
  readonly around: number;
}

/** Context that a frame is judged by: REACH second differences on either side. */
const CONTEXT = REACH + 1;

/**
 * Finds single-sample jumps block by block. With d[n] = x[n − 1] − 2·x[n] + x[n + 1] of the samples
 * as f32, and silence before and after the program, frame n is one where
 * |d[n]| ≥ LEAST_DIFFERENCE, no |d| within NEAR frames is larger, the first of equals counting,
 * |d[n − 1]| or |d[n + 1]| ≥ BESIDE·|d[n]|, and |d[n]| ≥ ISOLATION·|d[m]| for every m of
 * NEAR < |m − n| ≤ REACH.
 */
export class JumpFinder {
  readonly #tell: (jump: Jump) => void;
  /** Frame of the program that the waiting samples begin at. */
  #frame: number;
  #left: Float64Array = new Float64Array(2 * CONTEXT);
  #right: Float64Array = new Float64Array(2 * CONTEXT);

  /** @param firstFrame frame of the program that is pushed first */
  constructor(firstFrame: number, tell: (jump: Jump) => void) {
    this.#tell = tell;
    this.#frame = firstFrame - 2 * CONTEXT;
  }

  push({ left, right }: Stereo): void {
    this.#left = withNext(this.#left, left);
    this.#right = withNext(this.#right, right);
    const end = this.#left.length - CONTEXT;
    for (let at = CONTEXT; at < end; at++) {
      this.#look(0, this.#left, at);
      this.#look(1, this.#right, at);
    }
    const judged = Math.max(0, this.#left.length - 2 * CONTEXT);
    this.#left = this.#left.slice(judged);
    this.#right = this.#right.slice(judged);
    this.#frame += judged;
  }

  /** Silence after the program. */
  finish(): void {
    const silence = new Float64Array(CONTEXT + 1);
    this.push({ left: silence, right: silence });
  }

  #look(channel: 0 | 1, samples: Float64Array, at: number): void {
    const difference = secondDifference(samples, at);
    if (difference < LEAST_DIFFERENCE) return;
    for (let distance = 1; distance <= NEAR; distance++) {
      if (secondDifference(samples, at - distance) >= difference) return;
      if (secondDifference(samples, at + distance) > difference) return;
    }
    const before = secondDifference(samples, at - 1);
    const beside = Math.max(before, secondDifference(samples, at + 1));
    if (beside < BESIDE * difference) return;
    let around = 0;
    for (let distance = NEAR + 1; distance <= REACH; distance++) {
      around = Math.max(around, secondDifference(samples, at - distance));
      around = Math.max(around, secondDifference(samples, at + distance));
    }
    if (difference < ISOLATION * around) return;
    this.#tell({ frame: this.#frame + at, channel, difference, around });
  }
}

function secondDifference(samples: Float64Array, at: number): number {
  return Math.abs(samples[at - 1]! - 2 * samples[at]! + samples[at + 1]!);
}

function withNext(waiting: Float64Array, next: Float64Array): Float64Array {
  const samples = new Float64Array(waiting.length + next.length);
  samples.set(waiting);
  for (let n = 0; n < next.length; n++) samples[waiting.length + n] = Math.fround(next[n]!);
  return samples;
}
