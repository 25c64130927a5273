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
import { timeText } from './place-text.js';

/**
 * How much of a finding there was, and where: `8.2 µm, 03:12.4 to 03:14.0`, in the units in which
 * the finding itself is told; without a value the place alone, and empty for neither.
 */
export function earlierAmountText(finding: Finding, units: Units): string {
  const { atSeconds, untilSeconds, value } = finding;
  const amount = value === null ? '' : amountText(value, finding, units);
  const from = atSeconds === null ? '' : timeText(atSeconds);
  const until = untilSeconds === null ? from : timeText(untilSeconds);
  return [amount, until === from ? from : `${from} to ${until}`]
    .filter((text) => text !== '')
    .join(', ');
}

function amountText(value: number, { id, unit }: Finding, units: Units): string {
  switch (unit) {
    case 'metre':
      if (id === 'too-long') return diameterText(value, units);
      if (id === 'off-standard') return largeLengthText(value, units);
      return id === 'pitch-limit' ? pitchText(value, units) : lengthText(value, units);
    case 'ratio':
      return id === 'polarity' ? fixed(value, 2) : shareText(value);
    case 'decibel-full-scale':
      return `${levelText(value)}FS`;
    case 'second':
      return `${fixed(value, 1)} s`;
    case 'hertz':
      return frequencyText(value);
    case 'count':
    case 'none':
      return String(value);
  }
}
