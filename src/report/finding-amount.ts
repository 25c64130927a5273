import type { Finding } from '../model/forecast-types.js';
import {
  diameterText,
  fixed,
  frequencyText,
  largeLengthText,
  lengthText,
  levelText,
  pitchText,
  shareText,
  type Units,
} from './length-text.js';

/** Digits that may be added to tell a value from its limit. */
const MOST_DIGITS = 6;

/** Value and limit with as many digits as it takes to tell them apart. */
export function amountTexts(finding: Finding, units: Units): [value: string, limit: string] {
  return toldApart((more) => [
    amountText(finding.value, finding, units, more),
    amountText(finding.limit, finding, units, more),
  ]);
}

/**
 * Two texts with as many digits as it takes to tell them apart; as they are where none do.
 * @param texts the two, with so many digits more
 */
export function toldApart(
  texts: (more: number) => [value: string, limit: string],
): [value: string, limit: string] {
  for (let more = 0; more <= MOST_DIGITS; more++) {
    const [value, limit] = texts(more);
    if (value !== limit) return [value, limit];
  }
  return texts(0);
}

function amountText(
  value: number | null,
  { id, unit }: Finding,
  units: Units,
  more: number,
): string {
  if (value === null) return 'an unknown amount';
  switch (unit) {
    case 'metre':
      if (id === 'pitch-limit') return pitchText(value, units, more);
      if (id === 'off-standard') return largeLengthText(value, units, more);
      return id === 'too-long' ? diameterText(value, units, more) : lengthText(value, units, more);
    case 'ratio':
      return id === 'polarity' ? fixed(value, 2 + more) : shareText(value, more);
    case 'decibel-full-scale':
      return `${levelText(value, more)}FS`;
    case 'second':
      return `${fixed(value, 1 + more)} s`;
    case 'hertz':
      return frequencyText(value, more);
    case 'count':
    case 'none':
      return String(value);
  }
}
