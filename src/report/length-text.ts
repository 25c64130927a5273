import type { Metres, MetresPerTurn } from '../units.js';
import { toLpi, toMil, toMm, toUm } from './numbers.js';

/** Which units a reader wants: micrometres and millimetres, or mils, inches and lines per inch. */
export type Units = 'metric' | 'us';

/** A small length, such as land or width: `12.7 µm` or `0.50 mil`. */
export function lengthText(length: Metres, units: Units): string {
  return units === 'us' ? `${fixed(toMil(length), 2)} mil` : `${fixed(toUm(length), 1)} µm`;
}

/** A large length, such as a diameter: `241.3 mm` or `9.500 in`. */
export function largeLengthText(length: Metres, units: Units): string {
  const mil = toMil(length);
  if (units === 'us') return `${fixed(mil === null ? null : mil / 1000, 3)} in`;
  return `${fixed(toMm(length), 1)} mm`;
}

/** A pitch: `84.7 µm` or `300 LPI`. */
export function pitchText(pitch: MetresPerTurn, units: Units): string {
  return units === 'us' ? lpiText(pitch) : `${fixed(toUm(pitch), 1)} µm`;
}

/** A pitch in lines per inch: `300 LPI`, `129.3 LPI`. */
export function lpiText(pitch: MetresPerTurn): string {
  return `${Number(fixed(toLpi(pitch), 1))} LPI`;
}

/** A level with its sign: `+1.5 dB`. */
export function levelText(decibels: number): string {
  const text = fixed(decibels, 1);
  return `${decibels > 0 && !/^0\.0*$/.test(text) ? '+' : ''}${text} dB`;
}

/** A share: `1.25 %`. */
export function shareText(ratio: number): string {
  return `${fixed(100 * ratio, 2)} %`;
}

/** A frequency: `60 Hz`, `7.4 kHz`. */
export function frequencyText(hertz: number): string {
  return hertz >= 1000 ? `${fixed(hertz / 1000, 1)} kHz` : `${fixed(hertz, 0)} Hz`;
}

/** So many digits behind the point, −0 as 0; `–` for what has no finite value. */
export function fixed(value: number | null, digits: number): string {
  if (value === null || !Number.isFinite(value)) return '–';
  return (Number(value.toFixed(digits)) + 0).toFixed(digits);
}
