import FFT from 'fft.js';
import type { Complex } from '../../src/analysis/complex.js';
import type { Stereo } from '../../src/analysis/stereo.js';

/** Spectra of two real periodic signals: entry k belongs to k periods a signal length. */
export interface PairLines {
  readonly left: readonly Complex[];
  readonly right: readonly Complex[];
}

/**
 * Two real signals from their lines by one inverse transform, left + j·right.
 * x(n) = Σ over k of re(line(k)·e^(j2πkn/frames)), so a line's magnitude is its sine's peak.
 * @param frames a power of two, more than twice the number of lines
 */
export function fromLines(lines: PairLines, frames: number): Stereo {
  const transform = new FFT(frames);
  const input = transform.createComplexArray();
  input.fill(0);
  for (const [k, left] of lines.left.entries()) {
    const right = lines.right[k] ?? { re: 0, im: 0 };
    // Of the conjugate, since the transform there is runs forwards: conj(F(conj X)) is the inverse.
    add(input, k, (left.re - right.im) / 2, -(left.im + right.re) / 2);
    add(input, (frames - k) % frames, (left.re + right.im) / 2, -(right.re - left.im) / 2);
  }
  const output = transform.createComplexArray();
  transform.transform(output, input);
  return {
    left: Float64Array.from({ length: frames }, (_, n) => output[2 * n] ?? 0),
    right: Float64Array.from({ length: frames }, (_, n) => -(output[2 * n + 1] ?? 0)),
  };
}

function add(array: number[], k: number, re: number, im: number): void {
  array[2 * k] = (array[2 * k] ?? 0) + re;
  array[2 * k + 1] = (array[2 * k + 1] ?? 0) + im;
}

/** Lines of two real signals up to half their rate, the inverse of `fromLines`. */
export function toLines(signal: Stereo): PairLines {
  const frames = signal.left.length;
  const transform = new FFT(frames);
  const input = transform.createComplexArray();
  for (let n = 0; n < frames; n++) {
    input[2 * n] = signal.left[n] ?? 0;
    input[2 * n + 1] = signal.right[n] ?? 0;
  }
  const output = transform.createComplexArray();
  transform.transform(output, input);
  const left: Complex[] = [];
  const right: Complex[] = [];
  for (let k = 0; k < frames / 2; k++) {
    const mirror = (frames - k) % frames;
    const [re, im] = [output[2 * k] ?? 0, output[2 * k + 1] ?? 0];
    const [mirrorRe, mirrorIm] = [output[2 * mirror] ?? 0, output[2 * mirror + 1] ?? 0];
    const share = k === 0 ? 2 * frames : frames;
    left.push({ re: (re + mirrorRe) / share, im: (im - mirrorIm) / share });
    right.push({ re: (im + mirrorIm) / share, im: (mirrorRe - re) / share });
  }
  return { left, right };
}

/** Every line times what a formula says of its frequency; the line at 0 Hz is taken out. */
export function shapeLines(
  lines: PairLines,
  spacing: number,
  by: (hz: number) => Complex,
): PairLines {
  const factors = lines.left.map((_, k) => (k === 0 ? { re: 0, im: 0 } : by(k * spacing)));
  const shape = (row: readonly Complex[]): Complex[] =>
    row.map(({ re, im }, k) => {
      const factor = factors[k] ?? { re: 0, im: 0 };
      return { re: re * factor.re - im * factor.im, im: re * factor.im + im * factor.re };
    });
  return { left: shape(lines.left), right: shape(lines.right) };
}

/** A signal without end by its frames. */
export type Endless = (frame: number) => number;

/** Largest value from one frame to another, both included. */
export function largestBetween(signal: Endless, from: number, until: number): number {
  let largest = Number.NEGATIVE_INFINITY;
  for (let n = Math.ceil(from); n <= Math.floor(until); n++) largest = Math.max(largest, signal(n));
  return largest;
}

/** Minimum over reach frames on each side, by a queue of candidates; as long as the signal, a ring. */
export function ringMinimum(signal: Float64Array, reach: number): Float64Array {
  const frames = signal.length;
  const at = (n: number): number => signal[((n % frames) + frames) % frames] ?? 0;
  const least = new Float64Array(frames);
  const queue = new Int32Array(frames + 2 * reach + 1);
  let [head, tail] = [0, 0];
  for (let n = -reach; n < frames + reach; n++) {
    while (tail > head && at(queue[tail - 1] ?? 0) >= at(n)) tail--;
    queue[tail++] = n;
    const centre = n - reach;
    if (centre < 0) continue;
    while ((queue[head] ?? 0) < centre - reach) head++;
    least[centre] = at(queue[head] ?? 0);
  }
  return least;
}
