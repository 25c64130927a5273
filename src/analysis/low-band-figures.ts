import { HANN, WINDOW_FRAMES } from './low-windows.js';
import type { LowBand } from './motion.js';
import { ownMemory } from './row-memory.js';

/** Mean square per summed one-sided power: Parseval, and the window's own power. */
const POWER_SCALE = 2 / (WINDOW_FRAMES * HANN.reduce((sum, w) => sum + w * w, 0));

/**
 * Share of the power under which a wall is silent: where both go through one transform, its
 * rounding leaves about 1e-32 of the one in the other.
 */
const SILENT_SHARE = 1e-24;

/** Sums over the low band of one quarter's windows. */
export interface BandSums {
  /** Σ |left|² and Σ |right|². */
  left: number;
  right: number;
  /** Σ left · conj(right). */
  crossRe: number;
  crossIm: number;
}

/** As many quarters of silence, to be filled in. */
export function emptyLowBand(quarterCount: number, memory = ownMemory): LowBand {
  const row = (): Float64Array => new Float64Array(memory(8 * quarterCount));
  return {
    correlation: row(),
    phase: row(),
    verticalShare: row(),
    strongestFrequency: row(),
    verticalAmplitude: row(),
    lateralAmplitude: row(),
  };
}

/** Files what the sums of a quarter say, but for its strongest frequency. */
export function fileLowBand(
  lowBand: LowBand,
  quarter: number,
  { left, right, crossRe, crossIm }: BandSums,
): void {
  const total = left + right;
  if (total === 0) return;
  if (Math.min(left, right) > SILENT_SHARE * total) {
    // Two roots, since the product of what a program leaves behind it may be too small for any.
    const correlation = crossRe / (Math.sqrt(left) * Math.sqrt(right));
    lowBand.correlation[quarter] = Math.max(-1, Math.min(1, correlation));
    lowBand.phase[quarter] = Math.atan2(crossIm, crossRe);
  }
  const vertical = Math.max(0, (total - 2 * crossRe) / 2);
  lowBand.verticalShare[quarter] = vertical / total;
  lowBand.verticalAmplitude[quarter] = Math.sqrt(2 * vertical * POWER_SCALE);
  lowBand.lateralAmplitude[quarter] = Math.sqrt(2 * Math.max(0, total - vertical) * POWER_SCALE);
}
