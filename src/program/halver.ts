import type { HalfBandTaps } from '../analysis/half-band.js';
import { joinStereo, mapStereo, type Stereo } from '../analysis/stereo.js';

/** What a halving gives: the lower half of the band, and what was kept out of it. */
export interface Halved {
  readonly low: Stereo;
  readonly high: Stereo;
}

/**
 * Halves a program's rate block by block, by the half-bands of the analysis: what halveRate of
 * half-band.ts makes of the whole, but that nothing is rounded to f32 on the way.
 */
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
    const count = Math.max(0, Math.floor((heard.left.length - 2 * this.#margin) / 2));
    const left = this.#halve(heard.left, count);
    const right = this.#halve(heard.right, count);
    this.#waiting = mapStereo(heard, (channel) => channel.slice(2 * count));
    return {
      low: { left: left.low, right: right.low },
      high: { left: left.high, right: right.high },
    };
  }

  /** All that the taps reach is there, which is several times as fast as asking for each. */
  #halve(signal: Float64Array, count: number): { low: Float64Array; high: Float64Array } {
    const taps = this.#taps;
    const low = new Float64Array(count);
    const high = new Float64Array(count);
    for (let frame = 0; frame < count; frame++) {
      const at = this.#margin + 2 * frame;
      let around = 0;
      for (let pair = 0; pair < taps.length; pair++) {
        const before = signal[at - 1 - 2 * pair] ?? 0;
        around += (taps[pair] ?? 0) * (before + (signal[at + 1 + 2 * pair] ?? 0));
      }
      const middle = 0.5 * (signal[at] ?? 0);
      low[frame] = middle + around;
      high[frame] = middle - around;
    }
    return { low, high };
  }
}
