/** Frames of the internal rate a frame of the low band. */
export const LOW_BAND_DECIMATION = 32;

/**
 * Averages over a triangle of twice the step, which keeps what would fold into the low band 36 dB
 * down and displacement's own slope another 20:
 * y(j) = Σ over |i| < step of (step − |i|)/step² · x(j·step + i). Silence outside.
 * @returns one entry a whole step of the signal
 */
export function decimateByTriangle(signal: Float64Array, step = LOW_BAND_DECIMATION): Float64Array {
  const decimated = new Float64Array(Math.floor(signal.length / step));
  for (let out = 0; out < decimated.length; out++) {
    let sum = 0;
    for (let i = 1 - step; i < step; i++) {
      sum += (step - Math.abs(i)) * (signal[out * step + i] ?? 0);
    }
    decimated[out] = sum / (step * step);
  }
  return decimated;
}
