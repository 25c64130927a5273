import type { MetresPerTurn } from './units.js';

/** The largest multiple of `step` that is at most `level`, but for what rounding adds to it. */
export function floorToStep(level: number, step: number): number {
  return Math.floor(level / step + 1e-9) * step;
}

/** The least multiple of `step` that is at least `pitch`, but for what rounding takes from it. */
export function ceilToStep(pitch: MetresPerTurn, step: MetresPerTurn | null): MetresPerTurn {
  return step === null ? pitch : Math.ceil(pitch / step - 1e-9) * step;
}
