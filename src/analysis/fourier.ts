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
  readonly #spectrum: PairSpectrum;

  /**
   * @param size a power of two
   * @param bins how many bins are wanted, at most size/2 + 1
   */
  constructor(size: number, bins: number) {
    this.size = size;
    this.#transform = new FFT(size);
    this.#input = new Array<number>(2 * size).fill(0);
    this.#output = this.#transform.createComplexArray();
    this.#spectrum = {
      left: new Float64Array(bins),
      right: new Float64Array(bins),
      crossRe: new Float64Array(bins),
      crossIm: new Float64Array(bins),
    };
  }

  /**
   * @param left and right windowed, `size` long
   * @returns the same rows each time: they hold until the next call
   */
  spectrum(left: Float64Array, right: Float64Array): PairSpectrum {
    for (let n = 0; n < this.size; n++) {
      this.#input[2 * n] = left[n]!;
      this.#input[2 * n + 1] = right[n]!;
    }
    this.#transform.transform(this.#output, this.#input);
    this.#separate();
    return this.#spectrum;
  }

  #separate(): void {
    const { left, right, crossRe, crossIm } = this.#spectrum;
    for (let bin = 0; bin < left.length; bin++) {
      const mirror = (this.size - bin) % this.size;
      const re = this.#output[2 * bin]!;
      const im = this.#output[2 * bin + 1]!;
      const mirrorRe = this.#output[2 * mirror]!;
      const mirrorIm = -this.#output[2 * mirror + 1]!;
      const leftRe = (re + mirrorRe) / 2;
      const leftIm = (im + mirrorIm) / 2;
      const rightRe = (im - mirrorIm) / 2;
      const rightIm = -(re - mirrorRe) / 2;
      left[bin] = leftRe * leftRe + leftIm * leftIm;
      right[bin] = rightRe * rightRe + rightIm * rightIm;
      crossRe[bin] = leftRe * rightRe + leftIm * rightIm;
      crossIm[bin] = leftIm * rightRe - leftRe * rightIm;
    }
  }
}
