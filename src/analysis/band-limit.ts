import type { Hertz } from '../units.js';
import { designHalfBand, type HalfBandTaps } from './half-band.js';

/**
 * The way of a source rate to the internal rate: halved until it is 44.1 or 48 kHz, then doubled
 * once. Rates of neither family are brought to 48 kHz before.
 */
export interface BandLimit {
  /** Number of halvings: 0, 1 or 2. */
  readonly halvings: number;
  /** 44.1 or 48 kHz. */
  readonly baseRate: Hertz;
  /** 88.2 or 96 kHz: everything is computed at this rate. */
  readonly internalRate: Hertz;
  /** Half-band of the last halving and of the doubling. */
  readonly bandEndTaps: HalfBandTaps;
}

/**
 * Band end for the last halving and for the doubling at 44.1 kHz: 0.0025 dB to 20 kHz, 70 dB down
 * from 24.1 kHz; two in a row stay within 0.005 dB.
 */
const BAND_END_44: HalfBandTaps = designHalfBand(24, 7);

/** The same at 48 kHz, which has more room: 0.002 dB to 20 kHz, 72 dB down from 28 kHz. */
const BAND_END_48: HalfBandTaps = designHalfBand(14, 7.3);

/** From 176.4 or 192 kHz: 0.001 dB to 24.1 kHz, what folds into that is 80 dB down. */
export const FIRST_HALVING_TAPS: HalfBandTaps = designHalfBand(6, 8.6);

/**
 * Silence before the program, frames of the base rate: the band end is linear in phase, so that
 * the walls begin to move a little before a program that starts at once.
 */
export const LEAD_BASE_FRAMES = 64;
/** The same in frames of the internal rate. */
export const LEAD_FRAMES = 2 * LEAD_BASE_FRAMES;

const HALVINGS_OF_RATE: ReadonlyMap<Hertz, number> = new Map([
  [44_100, 0],
  [48_000, 0],
  [88_200, 1],
  [96_000, 1],
  [176_400, 2],
  [192_000, 2],
]);

/** True for the rates that halve to 44.1 or 48 kHz. */
export function isFamilyRate(sampleRate: Hertz): boolean {
  return HALVINGS_OF_RATE.has(sampleRate);
}

/**
 * How a source of this rate reaches the internal rate.
 * @param sampleRate one of either family, else a RangeError
 */
export function bandLimitOf(sampleRate: Hertz): BandLimit {
  const halvings = HALVINGS_OF_RATE.get(sampleRate);
  if (halvings === undefined) throw new RangeError(`${sampleRate} Hz is of neither family`);
  const baseRate = sampleRate / 2 ** halvings;
  const bandEndTaps = baseRate === 44_100 ? BAND_END_44 : BAND_END_48;
  return { halvings, baseRate, internalRate: 2 * baseRate, bandEndTaps };
}
