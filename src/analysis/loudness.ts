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

function powerOf(loudness: number): number {
  return 10 ** ((loudness + 0.691) / 10);
}

/**
 * Integrated loudness with both gates.
 * @param stepPowers K-weighted power, summed over the channels, of each whole 100 ms in turn
 * @returns LUFS; null if no gating block is above the gates (silence, or under 400 ms)
 * Source: ITU-R BS.1770-4, annex 1.
 */
export function integratedLoudness(stepPowers: readonly number[] | Float64Array): number | null {
  const blocks = gatingBlocks(stepPowers);
  const audible = meanOver(blocks, powerOf(ABSOLUTE_GATE));
  if (audible === null) return null;
  // A block is as loud as the mean of the audible ones at least.
  const gate = powerOf(Math.max(ABSOLUTE_GATE, loudnessOf(audible) + RELATIVE_GATE));
  const loud = meanOver(blocks, gate);
  return loud === null ? null : loudnessOf(loud);
}

function gatingBlocks(stepPowers: readonly number[] | Float64Array): Float64Array {
  const blocks = new Float64Array(Math.max(0, stepPowers.length - STEPS_PER_GATING_BLOCK + 1));
  for (let block = 0; block < blocks.length; block++) {
    let sum = 0;
    for (let step = block; step < block + STEPS_PER_GATING_BLOCK; step++) sum += stepPowers[step]!;
    blocks[block] = sum / STEPS_PER_GATING_BLOCK;
  }
  return blocks;
}

/** Mean of what is over a gate; null if nothing is. */
function meanOver(blocks: Float64Array, gate: number): number | null {
  let sum = 0;
  let count = 0;
  for (let block = 0; block < blocks.length; block++) {
    if (blocks[block]! <= gate) continue;
    sum += blocks[block]!;
    count += 1;
  }
  return count === 0 ? null : sum / count;
}
