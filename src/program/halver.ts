import { type HalfBandTaps, halveRate } from '../analysis/half-band.js';
import { joinStereo, mapStereo, type Stereo } from '../analysis/stereo.js';

/** What a halving gives: the lower half of the band, and what was kept out of it. */
export interface Halved {
  readonly low: Stereo;
  readonly high: Stereo;
}

/** Halves a program's rate block by block, by the half-bands of the analysis. */
export class Halver {
  readonly #taps: HalfBandTaps;
  /** Frames that the taps reach to each side, rounded up to an even number. */
  readonly #margin: number;
  #waiting: Stereo;

  /** Silence lies before the first frame. */
  constructor(taps: HalfBandTaps) {
    this.#taps = taps;
    this.#margin = 2 * taps.length;
    const silence = new Float64Array(this.#margin);
    this.#waiting = { left: silence, right: silence };
  }

  /** Takes the next frames; returns those that are complete, output n at the time of frame 2n. */
  push(block: Stereo): Halved {
    const heard = joinStereo(this.#waiting, block);
    const margin = this.#margin;
    const count = Math.max(0, Math.floor((heard.left.length - 2 * margin) / 2));
    const used = mapStereo(heard, (channel) => channel.subarray(0, 2 * (margin + count)));
    const [left, right] = [halveRate(used.left, this.#taps), halveRate(used.right, this.#taps)];
    this.#waiting = mapStereo(heard, (channel) => channel.slice(2 * count));
    const own = (row: Float64Array) => row.subarray(margin / 2, margin / 2 + count);
    return {
      low: { left: own(left.low), right: own(right.low) },
      high: { left: own(left.high), right: own(right.high) },
    };
  }
}
