import type { Finding } from '../model/forecast-types.js';
import { fixed } from './length-text.js';
import { timeText } from './place-text.js';

/** Stretches that are named one by one. */
const NAMED = 4;

/** `clipped`: how many runs, and how long the longest is. */
export function clippedWords({ value, atSeconds, longest }: Finding) {
  const first = atSeconds === null ? '' : ', the first of them here';
  const most =
    longest === undefined
      ? ''
      : `; the longest lasts ${millisecondsText(longest.untilSeconds - longest.fromSeconds)}, ` +
        `at ${timeText(longest.fromSeconds)}`;
  return {
    what: `Clipped: ${value} run${value === 1 ? '' : 's'} of samples at full scale${first}${most}.`,
    remedy: 'Ask for a premaster without clipping; flat tops turn into treble on the disc.',
  };
}

/** `jump`: how far the sample lies off, and what that asks of the head. */
export function jumpWords(finding: Finding, value: string, limit: string) {
  const { wall, atSeconds, acceleration, count } = finding;
  const channel = wall === 'both' ? 'both channels' : `the ${wall} channel`;
  const place = atSeconds === null ? '' : `, at ${fixed(atSeconds, 3)} s`;
  const asked =
    acceleration === undefined
      ? ''
      : `; it asks the head for up to ${fixed(acceleration, 0)} m/s² at 0 dB`;
  const more = count === undefined ? '' : `; of ${count} in all the largest are told`;
  return {
    what:
      `Jump: a single sample of ${channel} lies ${value} off its neighbours, over ${limit}` +
      `${place}${asked}${more}.`,
    remedy:
      'Repair the click, or ask for the file again: an edit, a lost sample or a bad transfer.',
  };
}

/** `gap-inside`: how many stretches, all together, and the first of them. */
export function gapWords({ count = 1, spans = [] }: Finding, value: string, limit: string) {
  const named = spans
    .slice(0, NAMED)
    .map(({ fromSeconds, untilSeconds }) => {
      return `${timeText(fromSeconds)} (${fixed(untilSeconds - fromSeconds, 1)} s)`;
    })
    .join(', ');
  const more = count > NAMED ? ` and ${count - NAMED} more` : '';
  return {
    what:
      `Digital silence inside the program: ${count} stretch${count === 1 ? '' : 'es'} of exact ` +
      `zeros of ${limit} or more, ${value} in all: ${named}${more}.`,
    remedy:
      'Between pieces or at a stop it is meant; inside one it is a dropout: ask for the file again.',
  };
}

function millisecondsText(seconds: number): string {
  return `${fixed(1000 * seconds, 2)} ms`;
}
