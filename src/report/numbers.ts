import { INCH, MICROMETRE, MIL, MILLIMETRE } from '../units.js';

/**
 * From SI to what is written: the unit of the name, rounded to a fixed step, so that the same side
 * gives the same text. null and whatever is not finite give null; −0 gives 0.
 */

type Maybe = number | null;

/** Micrometres, to 0.01. */
export function toUm(metres: Maybe): Maybe {
  return rounded(metres, 1 / MICROMETRE, 2);
}

/** Millimetres, to 0.001. */
export function toMm(metres: Maybe): Maybe {
  return rounded(metres, 1 / MILLIMETRE, 3);
}

/** Thousandths of an inch, to 0.001. */
export function toMil(metres: Maybe): Maybe {
  return rounded(metres, 1 / MIL, 3);
}

/** Lines per inch of a pitch, to 0.01. */
export function toLpi(metresPerTurn: Maybe): Maybe {
  return metresPerTurn === null ? null : rounded(INCH / metresPerTurn, 1, 2);
}

/** Per cent of a ratio, to 0.01. */
export function toPercent(ratio: Maybe): Maybe {
  return rounded(ratio, 100, 2);
}

/** Decibels, loudness units and meter readings, to 0.01. */
export function roundDb(decibels: Maybe): Maybe {
  return rounded(decibels, 1, 2);
}

/** Seconds and turns, to 0.001. */
export function roundSeconds(seconds: Maybe): Maybe {
  return rounded(seconds, 1, 3);
}

/** Ends of a stretch that may be some samples short, to 0.000001. */
export function exactSeconds(seconds: number): number {
  return Number(seconds.toFixed(6));
}

/** Accelerations, m/s², to 1. */
export function roundAcceleration(acceleration: number): number {
  return Math.round(acceleration);
}

/** Ratios, to 0.0001. */
export function roundRatio(ratio: Maybe): Maybe {
  return rounded(ratio, 1, 4);
}

/** Hertz, to 0.1. */
export function roundHz(hertz: Maybe): Maybe {
  return rounded(hertz, 1, 1);
}

/** Mean squares of acceleration, (m/s²)², to 1. */
export function roundMeanSquareAcceleration(meanSquare: Maybe): Maybe {
  return rounded(meanSquare, 1, 0);
}

/** Level of a mean square, dB re 1, rounded; null for 0. */
export function powerDb(meanSquare: number): Maybe {
  return roundDb(10 * Math.log10(meanSquare));
}

/** Level of an amplitude, dB re 1, rounded; null for 0. */
export function amplitudeDb(amplitude: number): Maybe {
  return roundDb(20 * Math.log10(amplitude));
}

function rounded(value: Maybe, factor: number, digits: number): Maybe {
  if (value === null || !Number.isFinite(value * factor)) return null;
  // Adding 0 turns −0 into 0.
  return Number((value * factor).toFixed(digits)) + 0;
}
