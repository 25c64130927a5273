import type { Hertz } from '../units.js';
import { kaiser } from './kaiser.js';
import { joinStereo, type Stereo } from './stereo.js';

/** Half the taps of a phase, in periods of the lower of the two rates. */
const HALF_PERIODS = 24;
/** 70 dB and 0.003 dB for a transition of ± 0.0465 of the lower rate around its half. */
const BETA = 7;

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

/**
 * Brings a program of any rate to another, block by block: one windowed-sinc low-pass at half the
 * lower rate, linear in phase and without delay, evaluated at the ratio's own phases.
 * Flat to 0.45 of the lower rate. For the rates of neither family; those have their half-bands.
 */
export class RateConverter {
  /** Output frames in the least time that holds whole frames of both rates, and source frames in it. */
  readonly up: number;
  readonly down: number;
  readonly #half: number;
  /** Taps of each phase, 2·half, made when first used. */
  readonly #phases: (Float64Array | undefined)[];
  readonly #scale: number;
  #left: Float64Array;
  #right: Float64Array;
  /** Source frame of the buffers' first entry, and the next output's frame and phase. */
  #first: number;
  #frame = 0;
  #phase = 0;

  constructor(from: Hertz, to: Hertz) {
    const divisor = greatestDivisor(from, to);
    this.up = to / divisor;
    this.down = from / divisor;
    this.#scale = Math.min(1, to / from);
    this.#half = Math.ceil(HALF_PERIODS / this.#scale);
    this.#phases = new Array<Float64Array | undefined>(this.up);
    this.#first = -this.#half;
    this.#left = new Float64Array(this.#half);
    this.#right = new Float64Array(this.#half);
  }

  /** Takes the next frames; returns those that are complete, output n at time n/to. */
  push(block: Stereo): Stereo {
    const heard = joinStereo({ left: this.#left, right: this.#right }, block);
    this.#left = heard.left;
    this.#right = heard.right;
    const outputs: { left: number[]; right: number[] } = { left: [], right: [] };
    while (this.#frame + this.#half < this.#first + this.#left.length) {
      const taps = this.#taps(this.#phase);
      outputs.left.push(this.#output(this.#left, taps));
      outputs.right.push(this.#output(this.#right, taps));
      this.#phase += this.down;
      this.#frame += Math.floor(this.#phase / this.up);
      this.#phase %= this.up;
    }
    const unneeded = Math.min(this.#left.length, this.#frame - this.#half + 1 - this.#first);
    if (unneeded > 0) {
      this.#left = this.#left.slice(unneeded);
      this.#right = this.#right.slice(unneeded);
      this.#first += unneeded;
    }
    return { left: Float64Array.from(outputs.left), right: Float64Array.from(outputs.right) };
  }

  /** Silence after the program, until its last frame has gone through. */
  finish(): Stereo {
    const silence = new Float64Array(this.#half + 1);
    return this.push({ left: silence, right: silence });
  }

  #output(channel: Float64Array, taps: Float64Array): number {
    const start = this.#frame - this.#half + 1 - this.#first;
    let sum = 0;
    for (let tap = 0; tap < taps.length; tap++) sum += taps[tap]! * channel[start + tap]!;
    return sum;
  }

  #taps(phase: number): Float64Array {
    const known = this.#phases[phase];
    if (known !== undefined) return known;
    const made = this.#makeTaps(phase / this.up);
    this.#phases[phase] = made;
    return made;
  }

  /** Taps for the value at `fraction` of the way from one source frame to the next; they sum to 1. */
  #makeTaps(fraction: number): Float64Array {
    const taps = new Float64Array(2 * this.#half);
    for (let tap = 0; tap < taps.length; tap++) {
      const distance = (tap - this.#half + 1 - fraction) * this.#scale;
      const sinc = distance === 0 ? 1 : Math.sin(Math.PI * distance) / (Math.PI * distance);
      taps[tap] = sinc * kaiser(distance / HALF_PERIODS, BETA);
    }
    const sum = taps.reduce((total, tap) => total + tap, 0);
    return taps.map((tap) => tap / sum);
  }
}
