/** Frames of the internal rate a frame of the low band. */
export const LOW_BAND_DECIMATION = 32;

/**
 * Averages over a triangle of twice the step, which keeps what would fold into the low band 36 dB
 * down and displacement's own slope another 20:
 * y(j) = Σ over |i| < step of (step − |i|)/step² · x(j·step + i). Silence outside.
 * The signal's steps are summed as they are and weighted, Σx and Σi·x, even and odd frames apart,
 * in f32; the rest is exact.
 * @param signal f32
 * @param step even
 * @returns one entry a whole step of the signal
 */
export function decimateByTriangle(signal: Float64Array, step = LOW_BAND_DECIMATION): Float64Array {
  const decimated = new Float64Array(Math.floor(signal.length / step));
  let rising = 0;
  for (let out = 0; out < decimated.length; out++) {
    // The triangle around the step's first frame: the last step's rise, this one's fall.
    const { sum, weighted } = sumsOf(signal.subarray(out * step, (out + 1) * step));
    decimated[out] = (step * sum - weighted + rising) / (step * step);
    rising = weighted;
  }
  return decimated;
}

/** Σx and Σi·x over a step. */
function sumsOf(frames: Float64Array): { sum: number; weighted: number } {
  const sums = [0, 0];
  const weighted = [0, 0];
  for (let n = 0; n < frames.length; n++) {
    const lane = n % 2;
    sums[lane] = Math.fround(sums[lane]! + frames[n]!);
    weighted[lane] = Math.fround(weighted[lane]! + Math.fround(n * frames[n]!));
  }
  return { sum: sums[0]! + sums[1]!, weighted: weighted[0]! + weighted[1]! };
}
