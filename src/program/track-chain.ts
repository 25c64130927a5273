import { bandLimitOf, FIRST_HALVING_TAPS, isFamilyRate } from '../analysis/band-limit.js';
import { RateConverter } from '../analysis/rate-converter.js';
import type { Stereo } from '../analysis/stereo.js';
import type { Hertz } from '../units.js';
import { type Halved, Halver } from './halver.js';

/** Frames of the program that a chain reaches to each side: more than its taps. */
export const CHAIN_REACH = 64;

/** A track's way from its own rate to the program's. */
export interface TrackChain {
  /** Takes the next frames of the track; returns what is complete, output 0 at the time of input 0. */
  readonly push: (block: Stereo) => Stereo;
  /** Output frames that begin with a whole frame of the track: it may begin at multiples of these. */
  readonly period: number;
  /** Frames of the track in such a period. */
  readonly periodFrames: number;
}

/** The least time that holds whole frames of a track and of its program, in frames of each. */
export function commonPeriod(
  from: Hertz,
  to: Hertz,
): { readonly program: number; readonly track: number } {
  const { period, periodFrames } = trackChain(from, to, () => {});
  return { program: period, track: periodFrames };
}

/**
 * Down to the base rate by the half-bands of the track's own family, and from 44.1 to 48 kHz, where
 * the program has that rate, by a low-pass at half the lower rate: flat to 20 kHz and 70 dB down
 * from 24.1 kHz like the band end that 44.1 kHz has in the analysis, whose place it takes. Rates of
 * neither family are converted in one step.
 * @param onHigh takes what the last halving kept out
 */
export function trackChain(
  from: Hertz,
  to: Hertz,
  onHigh: (high: Halved['high']) => void,
): TrackChain {
  if (from === to) return { push: (block) => block, period: 1, periodFrames: 1 };
  if (!isFamilyRate(from)) return converting(from, to, 1);
  const { halvings, baseRate, bandEndTaps } = bandLimitOf(from);
  const first = halvings === 2 ? new Halver(FIRST_HALVING_TAPS) : null;
  const last = halvings >= 1 ? new Halver(bandEndTaps) : null;
  const toBase = (block: Stereo): Stereo => {
    if (last === null) return block;
    const { low, high } = last.push(first === null ? block : first.push(block).low);
    onHigh(high);
    return low;
  };
  const stretch = 2 ** halvings;
  if (baseRate === to) return { push: toBase, period: 1, periodFrames: stretch };
  const converter = converting(baseRate, to, stretch);
  return { ...converter, push: (block) => converter.push(toBase(block)) };
}

function converting(from: Hertz, to: Hertz, stretch: number): TrackChain {
  const converter = new RateConverter(from, to);
  return {
    push: (block) => converter.push(block),
    period: converter.up,
    periodFrames: converter.down * stretch,
  };
}
