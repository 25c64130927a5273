/** Steps of 100 ms a second. Source: ITU-R BS.1770-4, annex 1: a quarter of a gating block. */
export const STEPS_A_SECOND = 10;
/** Blocks of 100 ms in a gating block of 400 ms; gating blocks overlap by three of them. */
const STEPS_PER_GATING_BLOCK = 4;
/** Absolute gate, LUFS. Source: ITU-R BS.1770-4, annex 1. */
const ABSOLUTE_GATE = -70;
/** Relative gate, LU. Source: as above. */
const RELATIVE_GATE = -10;

function loudnessOf(power: number): number {
  return -0.691 + 10 * Math.log10(power);
}

function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let n = 0; n < values.length; n++) sum += values[n]!;
  return sum / values.length;
}

/**
 * Integrated loudness with both gates.
 * @param stepPowers K-weighted power, summed over the channels, of each whole 100 ms in turn
 * @returns LUFS; null if no gating block is above the gates (silence, or under 400 ms)
 * Source: ITU-R BS.1770-4, annex 1.
 */
export function integratedLoudness(stepPowers: readonly number[] | Float64Array): number | null {
  const blocks: number[] = [];
  for (let end = STEPS_PER_GATING_BLOCK; end <= stepPowers.length; end++) {
    blocks.push(mean(stepPowers.slice(end - STEPS_PER_GATING_BLOCK, end)));
  }
  const audible = blocks.filter((power) => loudnessOf(power) > ABSOLUTE_GATE);
  if (audible.length === 0) return null;
  const gate = loudnessOf(mean(audible)) + RELATIVE_GATE;
  const loud = audible.filter((power) => loudnessOf(power) > gate);
  return loud.length === 0 ? null : loudnessOf(mean(loud));
}
