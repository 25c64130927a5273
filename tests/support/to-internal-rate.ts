import { bandLimitOf, FIRST_HALVING_TAPS } from '../../src/analysis/band-limit.js';
import { doubleRate, halveRate } from '../../src/analysis/half-band.js';

/** A program of either family at the rate at which the walls move, by the plain filters. */
export function toInternalRate(program: Float64Array, rate: number): Float64Array {
  return doubleRate(toBaseRate(program, rate), bandLimitOf(rate).bandEndTaps);
}

/** The same at the rate from which the walls are moved. */
export function toBaseRate(program: Float64Array, rate: number): Float64Array {
  const { halvings, bandEndTaps } = bandLimitOf(rate);
  let signal = program;
  for (let stage = halvings; stage > 0; stage--) {
    signal = halveRate(signal, stage === 1 ? bandEndTaps : FIRST_HALVING_TAPS).low;
  }
  return signal;
}
