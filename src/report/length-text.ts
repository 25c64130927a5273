import type { Metres, MetresPerTurn } from '../units.js';
import { INCH, linesPerInch, MICROMETRE, MIL, MILLIMETRE } from '../units.js';

/** Which units a reader wants: micrometres and millimetres, or mils, inches and lines per inch. */
export type Units = 'metric' | 'us';

/** A small length, such as land or width: `12.7 µm` or `0.50 mil`; `more` digits if wanted. */
export function lengthText(length: Metres, units: Units, more = 0): string {
  if (units === 'us') return `${fixed(inUnit(length, MIL), 2 + more)} mil`;
  return `${fixed(inUnit(length, MICROMETRE), 1 + more)} µm`;
}

/** A large length, such as a diameter: `241.3 mm` or `9.500 in`. */
export function largeLengthText(length: Metres, units: Units, more = 0): string {
  if (units === 'us') return `${fixed(inUnit(length, INCH), 3 + more)} in`;
  return `${fixed(inUnit(length, MILLIMETRE), 1 + more)} mm`;
}

/** A diameter; a spiral that has crossed the centre has none. */
export function diameterText(diameter: Metres, units: Units, more = 0): string {
  return diameter > 0 ? largeLengthText(diameter, units, more) : 'past the centre';
}

/** A pitch: `84.7 µm` or `300 LPI`. */
export function pitchText(pitch: MetresPerTurn, units: Units, more = 0): string {
  return units === 'us' ? lpiText(pitch, more) : lengthText(pitch, units, more);
}

/** A pitch in lines per inch: `300 LPI`, `129.3 LPI`. */
export function lpiText(pitch: MetresPerTurn, more = 0): string {
  return `${Number(fixed(linesPerInch(pitch), 1 + more))} LPI`;
}

/** A level with its sign: `+1.5 dB`. */
export function levelText(decibels: number, more = 0): string {
  const text = fixed(decibels, 1 + more);
  return `${decibels > 0 && !/^0\.0*$/.test(text) ? '+' : ''}${text} dB`;
}

/** A share: `1.25 %`. */
export function shareText(ratio: number, more = 0): string {
  return `${fixed(100 * ratio, 2 + more)} %`;
}

/** A frequency: `60 Hz`, `7.4 kHz`. */
export function frequencyText(hertz: number, more = 0): string {
  if (hertz >= 1000) return `${fixed(hertz / 1000, 1 + more)} kHz`;
  return `${fixed(hertz, more)} Hz`;
}

/** Twelve significant digits hide what the division leaves, so that a half is rounded as one. */
function inUnit(length: Metres, unit: Metres): number {
  return Number((length / unit).toPrecision(12));
}

/** So many digits behind the point, −0 as 0; `–` for what has no finite value. */
export function fixed(value: number | null, digits: number): string {
  if (value === null || !Number.isFinite(value)) return '–';
  return (Number(value.toFixed(digits)) + 0).toFixed(digits);
}
