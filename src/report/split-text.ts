import type { ForecastedFile } from '../forecast-result.js';
import { largeLengthText, type Units } from './length-text.js';
import { safeText } from './safe-text.js';
import { sideSplit } from './side-split.js';

/**
 * That the sides of a record are unbalanced, and where to part their tracks instead, in a sentence;
 * empty where they are balanced, are not all of tracks, or are of different discs or speeds.
 */
export function splitText(files: readonly ForecastedFile[], units: Units): string {
  const split = sideSplit(files);
  if (split === null) return '';
  const takes = split.takes.map((radius) => largeLengthText(radius, units)).join(', ');
  let next = 0;
  const firsts = split.counts.slice(0, -1).map((count) => {
    next += count;
    return `“${safeText(split.names[next] ?? '')}”`;
  });
  return (
    `The sides are unbalanced: they take ${takes} of radius. With a new side from ` +
    `${firsts.join(' and from ')} on, the fullest takes ${largeLengthText(split.most, units)}.`
  );
}
