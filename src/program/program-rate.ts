import { bandLimitOf, isFamilyRate } from '../analysis/band-limit.js';
import { CONVERTED_RATE } from '../analysis/program.js';
import type { Hertz } from '../units.js';

/**
 * The rate of a program of tracks at these rates. Tracks at one rate keep it, and the analysis does
 * with it what it does with a file. Tracks at several rates meet at the base rate, 44.1 or 48 kHz,
 * to which the analysis would bring each of them first of all: there each has gone through the band
 * end of its own family, and nothing that is judged is lost. It is 44.1 kHz for the rates of that
 * family; 48 kHz where any track is of the other, or of neither, which is brought to 48 kHz anyway.
 */
export function programRate(rates: readonly Hertz[]): Hertz {
  const [first = CONVERTED_RATE] = rates;
  if (rates.every((rate) => rate === first)) return first;
  const bases = rates.map((rate) =>
    isFamilyRate(rate) ? bandLimitOf(rate).baseRate : CONVERTED_RATE,
  );
  return Math.max(...bases);
}
