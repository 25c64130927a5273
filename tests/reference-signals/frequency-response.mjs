// @ts-check
/**
 * The Fourier sum of an impulse response at single frequencies, Σ h(n)·e^(−j2πfn/rate).
 * @param {ArrayLike<number>} impulseResponse
 * @param {readonly number[]} frequencies Hz
 * @param {number} rate frames a second
 * @returns {{ db: number[], degrees: number[] }} magnitude re 1, and phase in −180 … 180
 */
export function frequencyResponse(impulseResponse, frequencies, rate) {
  const sums = frequencies.map((hz) => fourierSum(impulseResponse, (2 * Math.PI * hz) / rate));
  return {
    db: sums.map(({ re, im }) => 20 * Math.log10(Math.hypot(re, im))),
    degrees: sums.map(({ re, im }) => (Math.atan2(im, re) * 180) / Math.PI),
  };
}

/**
 * @param {ArrayLike<number>} signal
 * @param {number} angle radians a frame
 */
function fourierSum(signal, angle) {
  let re = 0;
  let im = 0;
  for (let frame = 0; frame < signal.length; frame++) {
    const value = signal[frame] ?? 0;
    re += value * Math.cos(angle * frame);
    im -= value * Math.sin(angle * frame);
  }
  return { re, im };
}

/**
 * Frequencies in equal ratios, both ends included, rounded to 0.01 Hz; 1 kHz is among them.
 * @param {number} from
 * @param {number} until
 * @param {number} count without the 1 kHz
 */
export function logFrequencies(from, until, count) {
  const ratio = until / from;
  const steps = Array.from({ length: count }, (_, step) => from * ratio ** (step / (count - 1)));
  const rounded = [...steps, 1000].map((hz) => Math.round(hz * 100) / 100);
  return [...new Set(rounded)].sort((a, b) => a - b);
}
