import FFT from 'fft.js';

/** Power and cross spectra of a pair of real signals, from bin 0 on. */
export interface PairSpectrum {
  readonly left: Float64Array;
  readonly right: Float64Array;
  /** Of left · conj(right). */
  readonly crossRe: Float64Array;
  readonly crossIm: Float64Array;
}

/** Spectra of two real signals by one complex transform: left as its real part, right as its imaginary. */
export class PairTransform {
  readonly size: number;
  readonly #transform: FFT;
  readonly #input: number[];
  readonly #output: number[];

  /** @param size a power of two */
  constructor(size: number) {
    this.size = size;
    this.#transform = new FFT(size);
    this.#input = new Array<number>(2 * size).fill(0);
    this.#output = this.#transform.createComplexArray();
  }

  /**
   * @param left and right windowed, `size` long
   * @param bins how many bins are wanted, at most size/2 + 1
   */
  spectrum(left: Float64Array, right: Float64Array, bins: number): PairSpectrum {
    for (let n = 0; n < this.size; n++) {
      this.#input[2 * n] = left[n]!;
      this.#input[2 * n + 1] = right[n]!;
    }
    this.#transform.transform(this.#output, this.#input);
    return this.#separate(bins);
  }

  #separate(bins: number): PairSpectrum {
    const [left, right] = [new Float64Array(bins), new Float64Array(bins)];
    const [crossRe, crossIm] = [new Float64Array(bins), new Float64Array(bins)];
    for (let bin = 0; bin < bins; bin++) {
      const mirror = (this.size - bin) % this.size;
      const [re, im] = [this.#output[2 * bin]!, this.#output[2 * bin + 1]!];
      const [mirrorRe, mirrorIm] = [this.#output[2 * mirror]!, -this.#output[2 * mirror + 1]!];
      const [lRe, lIm] = [(re + mirrorRe) / 2, (im + mirrorIm) / 2];
      const [rRe, rIm] = [(im - mirrorIm) / 2, -(re - mirrorRe) / 2];
      left[bin] = lRe * lRe + lIm * lIm;
      right[bin] = rRe * rRe + rIm * rIm;
      crossRe[bin] = lRe * rRe + lIm * rIm;
      crossIm[bin] = lIm * rRe - lRe * rIm;
    }
    return { left, right, crossRe, crossIm };
  }
}
