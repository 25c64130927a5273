import type { Hertz } from '../units.js';
import { LOW_BAND_DECIMATION } from './decimate.js';
import { PairTransform } from './fourier.js';
import { type BandSums, emptyLowBand, fileLowBand } from './low-band-figures.js';
import { binGains, HANN, WINDOW_CENTRES, WINDOW_FRAMES } from './low-windows.js';
import { type LowBand, QUARTERS_PER_TURN } from './motion.js';
import type { SpiralClock } from './spiral-clock.js';

/**
 * Follows the displacement under `lowBandHz` quarter by quarter from its decimated signal, in
 * blocks of any size: the definition of what the kernel's low-windows.ts does.
 */
export class LowBandMeter {
  readonly #rate: Hertz;
  readonly #quarterFrames: number;
  readonly #windowedLeft = new Float64Array(WINDOW_FRAMES);
  readonly #windowedRight = new Float64Array(WINDOW_FRAMES);
  /** Weight of each bin's power, from bin 0 to the last within the low band. */
  readonly #gains: Float64Array;
  readonly #transform: PairTransform;
  /** Power of both walls by bin, over the windows of the quarter in hand. */
  readonly #power = new Float64Array(WINDOW_FRAMES / 2 + 1);
  readonly #result: LowBand;
  /** Frames that are still needed, of which the first `#length` entries are there. */
  #left = new Float64Array(4 * WINDOW_FRAMES);
  #right = new Float64Array(4 * WINDOW_FRAMES);
  #length = WINDOW_FRAMES;
  /** Number of the buffers' first entry among the decimated frames of the program. */
  #first: number;
  readonly #firstQuarter: number;
  #quarter = 0;

  /** @param clock its first quarter and frame are those of the first call of `push` */
  constructor(clock: SpiralClock, lowBand: Hertz, quarterCount: number) {
    this.#rate = clock.rate / LOW_BAND_DECIMATION;
    this.#quarterFrames = clock.turnFrames / LOW_BAND_DECIMATION / QUARTERS_PER_TURN;
    this.#first = clock.firstFrame / LOW_BAND_DECIMATION - WINDOW_FRAMES;
    this.#firstQuarter = clock.firstQuarter;
    this.#gains = binGains(lowBand, this.#rate);
    this.#transform = new PairTransform(WINDOW_FRAMES, this.#gains.length);
    this.#result = emptyLowBand(quarterCount);
  }

  /** Takes the next decimated frames, m; interleaved left, right. */
  push(frames: ArrayLike<number>): void {
    const count = frames.length / 2;
    this.#makeRoom(count);
    for (let n = 0; n < count; n++) {
      this.#left[this.#length + n] = frames[2 * n]!;
      this.#right[this.#length + n] = frames[2 * n + 1]!;
    }
    this.#length += count;
    this.#forget();
    const quarters = this.#result.phase.length;
    while (this.#quarter < quarters && this.#lastNeeded() <= this.#end()) this.#measureQuarter();
  }

  /** Silence after the end, then the result. */
  finish(): LowBand {
    this.push(new Float64Array(2 * Math.ceil(WINDOW_FRAMES + this.#quarterFrames)));
    return this.#result;
  }

  #makeRoom(count: number): void {
    if (this.#length + count <= this.#left.length) return;
    const longer = (row: Float64Array): Float64Array<ArrayBuffer> => {
      const grown = new Float64Array(2 * (this.#length + count));
      grown.set(row.subarray(0, this.#length));
      return grown;
    };
    this.#left = longer(this.#left);
    this.#right = longer(this.#right);
  }

  #end(): number {
    return this.#first + this.#length;
  }

  #windowStart(centre: number): number {
    const quarter = this.#firstQuarter + this.#quarter;
    return Math.round((quarter + centre) * this.#quarterFrames) - WINDOW_FRAMES / 2;
  }

  #lastNeeded(): number {
    return this.#windowStart(WINDOW_CENTRES[1]) + WINDOW_FRAMES;
  }

  #measureQuarter(): void {
    const sums: BandSums = { left: 0, right: 0, crossRe: 0, crossIm: 0 };
    this.#power.fill(0);
    for (const centre of WINDOW_CENTRES) this.#addWindow(this.#windowStart(centre), sums);
    this.#result.strongestFrequency[this.#quarter] = this.#strongest();
    fileLowBand(this.#result, this.#quarter, sums);
    this.#quarter++;
    this.#forget();
  }

  /** Lets go what lies before the next window. */
  #forget(): void {
    const until = Math.min(this.#windowStart(WINDOW_CENTRES[0]), this.#end());
    const unneeded = until - this.#first;
    if (unneeded <= 0) return;
    this.#left.copyWithin(0, unneeded, this.#length);
    this.#right.copyWithin(0, unneeded, this.#length);
    this.#first += unneeded;
    this.#length -= unneeded;
  }

  #addWindow(start: number, sums: BandSums): void {
    const offset = start - this.#first;
    for (let n = 0; n < WINDOW_FRAMES; n++) {
      this.#windowedLeft[n] = HANN[n]! * this.#left[offset + n]!;
      this.#windowedRight[n] = HANN[n]! * this.#right[offset + n]!;
    }
    const spectrum = this.#transform.spectrum(this.#windowedLeft, this.#windowedRight);
    for (let bin = 1; bin < this.#gains.length; bin++) {
      const gain = this.#gains[bin]!;
      sums.left += gain * spectrum.left[bin]!;
      sums.right += gain * spectrum.right[bin]!;
      sums.crossRe += gain * spectrum.crossRe[bin]!;
      sums.crossIm += gain * spectrum.crossIm[bin]!;
      this.#power[bin]! += gain * (spectrum.left[bin]! + spectrum.right[bin]!);
    }
  }

  /** Frequency of the largest bin, between bins by the parabola through its neighbours. */
  #strongest(): Hertz {
    const power = this.#power;
    let top = 0;
    for (let bin = 1; bin < Math.min(this.#gains.length, power.length - 1); bin++) {
      if (power[bin]! > power[top]!) top = bin;
    }
    if (top === 0) return 0;
    const [before, at, after] = [power[top - 1]!, power[top]!, power[top + 1]!];
    const curvature = 2 * at - before - after;
    const offset = curvature > 0 ? (after - before) / (2 * curvature) : 0;
    return ((top + Math.max(-0.5, Math.min(0.5, offset))) * this.#rate) / WINDOW_FRAMES;
  }
}
