// @ts-check
const LENGTH = 4096;

/**
 * One period of a sum of harmonics, read at any phase.
 * @param {readonly number[]} amplitudes of harmonic 1, 2, 3 …
 * @returns {(cycles: number) => number} value at a phase counted in periods
 */
export function waveform(amplitudes) {
  const table = Float64Array.from({ length: LENGTH + 1 }, (_, step) =>
    amplitudes.reduce(
      (sum, amplitude, k) => sum + amplitude * Math.sin((2 * Math.PI * (k + 1) * step) / LENGTH),
      0,
    ),
  );
  return (cycles) => {
    const place = (cycles - Math.floor(cycles)) * LENGTH;
    const step = Math.floor(place);
    const before = table[step] ?? 0;
    return before + (place - step) * ((table[step + 1] ?? 0) - before);
  };
}

/**
 * @param {number} count
 * @param {(harmonic: number) => number} amplitude
 */
export function harmonics(count, amplitude) {
  return Array.from({ length: count }, (_, k) => amplitude(k + 1));
}
