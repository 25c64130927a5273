import { kaiser } from './kaiser.js';

/**
 * A half-band low-pass in the form both directions use: beside the centre tap of ½, the taps at
 * the odd distances 1, 3, 5 … from it; those at even distances are 0. They sum to ¼, so that the
 * gain at DC is 1; f32, like all that passes through.
 */
export type HalfBandTaps = Float64Array;

/**
 * Windowed half-band low-pass, corner at a quarter of the higher rate.
 * @param pairs number of odd taps on each side
 * @param beta Kaiser's shape parameter
 */
export function designHalfBand(pairs: number, beta: number): HalfBandTaps {
  const taps = new Float64Array(pairs);
  for (let pair = 0; pair < pairs; pair++) {
    const distance = 2 * pair + 1;
    const ideal = Math.sin((Math.PI * distance) / 2) / (Math.PI * distance);
    taps[pair] = ideal * kaiser(distance / (2 * pairs), beta);
  }
  const scale = 0.25 / taps.reduce((sum, tap) => sum + tap, 0);
  return taps.map((tap) => Math.fround(tap * scale));
}

/**
 * Twice the rate: y(2n) = x(n), y(2n+1) = 2·Σ h·(x(n−k) + x(n+1+k)), in f32. Silence outside.
 * @returns twice as many samples, y(2n) at the time of x(n)
 */
export function doubleRate(signal: Float64Array, taps: HalfBandTaps): Float64Array {
  const doubled = new Float64Array(2 * signal.length);
  for (let frame = 0; frame < signal.length; frame++) {
    let between = 0;
    for (let pair = 0; pair < taps.length; pair++) {
      between = plusPair(between, taps[pair]!, signal[frame - pair], signal[frame + 1 + pair]);
    }
    doubled[2 * frame] = signal[frame]!;
    doubled[2 * frame + 1] = 2 * between;
  }
  return doubled;
}

/**
 * Taps that double the rate of a signal's steps from frame to frame as `doubleRate` does the
 * signal's: g(j) = 2·Σ h(k) over k ≥ j, j from 1 on; f32. One less than the half-band's.
 */
export function stepTapsOf(taps: HalfBandTaps): Float64Array {
  return taps
    .map((_, k) => Math.fround(2 * taps.subarray(k).reduce((sum, tap) => sum + tap, 0)))
    .subarray(1);
}

/**
 * Steps d(n) = x(n) − x(n−1) at twice the rate: s(2n−1) = ½d(n) + Σ g(j)·(d(n+j) − d(n−j)) and
 * s(2n) = d(n) − s(2n−1), in f32, which they keep where the signal itself hardly changes.
 * @returns twice as many, s(2n) at the time of d(n); that of −1 is left out
 */
export function doubleSteps(steps: Float64Array, stepTaps: Float64Array): Float64Array {
  const doubled = new Float64Array(2 * steps.length);
  for (let frame = 0; frame < steps.length; frame++) {
    let around = 0;
    for (let pair = 0; pair < stepTaps.length; pair++) {
      const before = -(steps[frame - 1 - pair] ?? 0);
      around = plusPair(around, stepTaps[pair]!, before, steps[frame + 1 + pair]);
    }
    const odd = Math.fround(0.5 * steps[frame]! + around);
    if (frame > 0) doubled[2 * frame - 1] = odd;
    doubled[2 * frame] = Math.fround(steps[frame]! - odd);
  }
  return doubled;
}

/** A signal of half the rate, and what the low-pass kept out of it (aliased, its power kept). */
export interface Halves {
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/**
 * Half the rate: low(n) = ½x(2n) + Σ h·(x(2n−1−2k) + x(2n+1+2k)), high(n) = x(2n) − low(n), in
 * f32. Silence outside.
 * @returns half as many samples (rounded up), low(n) at the time of x(2n)
 */
export function halveRate(signal: Float64Array, taps: HalfBandTaps): Halves {
  const length = Math.ceil(signal.length / 2);
  const low = new Float64Array(length);
  const high = new Float64Array(length);
  for (let frame = 0; frame < length; frame++) {
    const at = 2 * frame;
    let around = 0;
    for (let pair = 0; pair < taps.length; pair++) {
      const distance = 1 + 2 * pair;
      around = plusPair(around, taps[pair]!, signal[at - distance], signal[at + distance]);
    }
    low[frame] = Math.fround(0.5 * signal[at]! + around);
    high[frame] = Math.fround(0.5 * signal[at]! - around);
  }
  return { low, high };
}

/** A sum and a pair of frames of equal weight, rounded at each step. */
function plusPair(sum: number, weight: number, before = 0, after = 0): number {
  return Math.fround(sum + Math.fround(weight * Math.fround(before + after)));
}
