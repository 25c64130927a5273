declare module 'fft.js' {
  /** Radix-4 transform of a power-of-two size; complex numbers interleaved in plain arrays. */
  export default class FFT {
    constructor(size: number);
    createComplexArray(): number[];
    transform(output: number[], input: number[]): void;
  }
}
