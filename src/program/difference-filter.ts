import { type Biquad, designHighPass } from '../analysis/biquad.js';
import { wiringOf } from '../analysis/program-level.js';
import type { Stereo } from '../analysis/stereo.js';
import type { Settings } from '../settings.js';
import type { Hertz, Seconds } from '../units.js';
import type { Elliptical } from './program-side.js';

/** As in analysis/settling.ts: periods of the corner after which the filter has forgotten. */
const PERIODS = 6;

/** How long the filter of a track rings on behind it, and must be heard before a place in it. */
export function ringingSeconds({ corner }: Elliptical, { speedFactor }: Settings): Seconds {
  return corner === null ? 0 : (PERIODS / corner) * speedFactor;
}

/**
 * A track's own elliptical filter, block by block from rest. The chain filters the difference of
 * the channels as they are wired, d = g_L·L − g_R·R; all of it is linear, so that the same is
 * reached by adding (E·d − d)/2 to the wired left and taking it from the wired right beforehand.
 */
export class DifferenceFilter {
  readonly #section: Biquad;
  readonly #leftGain: number;
  readonly #rightGain: number;
  #x1 = 0;
  #x2 = 0;
  #y1 = 0;
  #y2 = 0;

  /** @param rate of the program that it is applied to */
  constructor(corner: Hertz, order: 1 | 2, settings: Settings, rate: Hertz) {
    this.#section = designHighPass(order, corner / settings.speedFactor, rate);
    const { swap, leftGain, rightGain } = wiringOf(settings);
    // By channel of the program, the sign that of its wall in the difference.
    this.#leftGain = swap ? -rightGain : leftGain;
    this.#rightGain = swap ? -leftGain : rightGain;
  }

  push({ left, right }: Stereo): Stereo {
    const { b0, b1, b2, a1, a2 } = this.#section;
    const outputs = { left: new Float64Array(left.length), right: new Float64Array(left.length) };
    for (let n = 0; n < left.length; n++) {
      const [l, r] = [left[n] ?? 0, right[n] ?? 0];
      const x = this.#leftGain * l - this.#rightGain * r;
      const y = b0 * x + b1 * this.#x1 + b2 * this.#x2 - a1 * this.#y1 - a2 * this.#y2;
      this.#x2 = this.#x1;
      this.#x1 = x;
      this.#y2 = this.#y1;
      this.#y1 = y;
      const added = (y - x) / 2;
      outputs.left[n] = l + added / this.#leftGain;
      outputs.right[n] = r - added / this.#rightGain;
    }
    return outputs;
  }
}
