/** Aliases of number that name the SI unit a value is in; the model and the analysis use no other. */
export type Metres = number;
export type MetresPerSecond = number;
export type Seconds = number;
export type Hertz = number;
/** Pitch of the spiral, metres of radius per turn. */
export type MetresPerTurn = number;

/** Metres in a micrometre. */
export const MICROMETRE: Metres = 1e-6;
/** Metres in a millimetre. */
export const MILLIMETRE: Metres = 1e-3;
/** Metres in an inch. Source: international yard and pound agreement (exact). */
export const INCH: Metres = 0.0254;
/** Metres in a mil, a thousandth of an inch. */
export const MIL: Metres = INCH / 1000;

const LENGTH_UNITS = {
  um: MICROMETRE,
  mm: MILLIMETRE,
  cm: 10 * MILLIMETRE,
  mil: MIL,
  in: INCH,
};
const SPEED_UNITS = { 'mm/s': 1e-3, 'cm/s': 1e-2, 'm/s': 1 };
const PERCENT = { '%': 0.01 };
/** Lines per inch stand apart: their pitch is one inch over them. */
const LINES = { lpi: 1 };

/** What parseLength, parsePitch, parseSpeed and parsePercent read; all numbers are unsigned. */
export const LENGTH_PATTERN = patternOf(LENGTH_UNITS);
export const PITCH_PATTERN = patternOf({ ...LENGTH_UNITS, ...LINES });
export const SPEED_PATTERN = patternOf(SPEED_UNITS);
export const PERCENT_PATTERN = patternOf(PERCENT);

/**
 * A length with its unit, such as '85um', '292.1 mm', '2mil' or '11.5in', in metres.
 * Without a unit, negative, or in lines per inch it is none: null. µ may stand for the u.
 */
export function parseLength(text: string): Metres | null {
  return parseWithUnit(text, LENGTH_PATTERN, LENGTH_UNITS);
}

/** A pitch, as a length a turn or in lines per inch ('300lpi'), in metres a turn; else null. */
export function parsePitch(text: string): MetresPerTurn | null {
  const lines = parseWithUnit(text, PITCH_PATTERN, LINES);
  if (lines === null) return parseLength(text);
  return lines > 0 ? INCH / lines : null;
}

/** A speed with its unit, such as '7cm/s', in metres a second; else null. */
export function parseSpeed(text: string): MetresPerSecond | null {
  return parseWithUnit(text, SPEED_PATTERN, SPEED_UNITS);
}

/** A share, such as '0.1%', as a ratio; without the sign it is none: null. */
export function parsePercent(text: string): number | null {
  return parseWithUnit(text, PERCENT_PATTERN, PERCENT);
}

/** A length in micrometres with its unit; read again it is the same to 1e-12 of it. */
export function formatLength(length: Metres): string {
  return `${shortest(length / MICROMETRE)}um`;
}

/** A diameter in millimetres with its unit, as exact. */
export function formatDiameter(length: Metres): string {
  return `${shortest(length / MILLIMETRE)}mm`;
}

/** A speed in centimetres a second with its unit, as exact. */
export function formatSpeed(speed: MetresPerSecond): string {
  return `${shortest(speed / SPEED_UNITS['cm/s'])}cm/s`;
}

/** Lines per inch of a pitch. */
export function linesPerInch(pitch: MetresPerTurn): number {
  return INCH / pitch;
}

function parseWithUnit(
  text: string,
  pattern: RegExp,
  units: Readonly<Record<string, number>>,
): number | null {
  const match = pattern.exec(text);
  const factor = units[(match?.[2] ?? '').toLowerCase().replace(/^[\u00b5\u03bc]/, 'u')];
  if (match === null || factor === undefined) return null;
  const value = Number(match[1]) * factor;
  return Number.isFinite(value) ? value : null;
}

/** Upper and lower case are alike, and both the micro sign and the Greek letter are a u. */
function patternOf(units: Readonly<Record<string, number>>): RegExp {
  const names = Object.keys(units).map((unit) =>
    unit.replace(/[a-z]/g, (letter) => {
      const micro = letter === 'u' ? '\\u00b5\\u03bc' : '';
      return `[${letter}${letter.toUpperCase()}${micro}]`;
    }),
  );
  const number = '(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?';
  return new RegExp(`^ *(${number}) *(${names.join('|')}) *$`);
}

/** Thirteen significant digits hide what the division by a power of ten leaves. */
function shortest(value: number): string {
  return String(Number(value.toPrecision(13)));
}
