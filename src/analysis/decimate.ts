/** Frames of the internal rate a frame of the low band. */
export const LOW_BAND_DECIMATION = 32;

/**
 * Averages over a triangle of twice the step, which keeps what would fold into the low band 36 dB
 * down and displacement's own slope another 20:
 * y(j) = Σ over |i| < step of (step − |i|)/step² · x(j·step + i). Silence outside.
 * Over a step every fourth frame is summed apart, in f32, and so is what the four sums are on their
 * way, which weighs a frame by how early it came; the rest is exact.
 * @param signal f32
 * @param step a multiple of four
 * @returns one entry a whole step of the signal
 */
export function decimateByTriangle(signal: Float64Array, step = LOW_BAND_DECIMATION): Float64Array {
  const decimated = new Float64Array(Math.floor(signal.length / step));
  let rising = 0;
  for (let out = 0; out < decimated.length; out++) {
    // The triangle around the step's first frame: the last step's rise, this one's fall.
    const { sum, falling } = sumsOf(signal.subarray(out * step, (out + 1) * step));
    decimated[out] = (falling + rising) / (step * step);
    rising = step * sum - falling;
  }
  return decimated;
}

/** Σx and Σ(step − i)·x over a step. */
function sumsOf(frames: Float64Array): { sum: number; falling: number } {
  const sums = [0, 0, 0, 0];
  const running = [0, 0, 0, 0];
  for (let n = 0; n < frames.length; n++) {
    const lane = n % 4;
    sums[lane] = Math.fround(sums[lane]! + frames[n]!);
    running[lane] = Math.fround(running[lane]! + sums[lane]!);
  }
  const [first, second, third, fourth] = [sums[0]!, sums[1]!, sums[2]!, sums[3]!];
  const ran = running[0]! + running[1]! + (running[2]! + running[3]!);
  // Of four frames, the first weighs four times what it ran for, the others 1, 2 and 3 less.
  const less = second + 2 * third + 3 * fourth;
  return { sum: first + second + (third + fourth), falling: 4 * ran - less };
}
