import type { ForecastedFile } from '../forecast-result.js';
import { bestSplit, radiusOf, type SplitTrack } from '../model/best-split.js';
import { largeLengthText, type Units } from './length-text.js';
import { safeText } from './safe-text.js';

/**
 * That the sides of a record are unbalanced, and where to part their tracks instead, in a sentence;
 * empty where they are balanced, are not all of tracks, or are of different discs or speeds.
 */
export function splitText(files: readonly ForecastedFile[], units: Units): string {
  const [first] = files;
  const isOneKind = files.every(
    ({ settings, forecast }) =>
      (forecast.tracks ?? []).length > 0 &&
      settings.disc === first?.settings.disc &&
      settings.rpm === first.settings.rpm,
  );
  if (files.length < 2 || !isOneKind) return '';
  const sides = files.map(tracksToSplit);
  const split = bestSplit(sides);
  if (split === null) return '';
  const takes = sides.map((side) => largeLengthText(radiusOf(side), units)).join(', ');
  let next = 0;
  const firsts = split.counts.slice(0, -1).map((count) => {
    next += count;
    return `“${safeText(sides.flat()[next]?.name ?? '')}”`;
  });
  return (
    `The sides are unbalanced: they take ${takes} of radius. With a new side from ` +
    `${firsts.join(' and from ')} on, the fullest takes ${largeLengthText(split.most, units)}.`
  );
}

/** Each with the gap before it; what follows the last belongs to it. */
function tracksToSplit({ forecast }: ForecastedFile): SplitTrack[] {
  const { tracks = [], durationSeconds, executes } = forecast;
  const { startDiameter, endDiameter } = forecast[executes];
  return tracks.map((track, at) => {
    const isLast = at === tracks.length - 1;
    const from = tracks[at - 1]?.endDiameter ?? startDiameter;
    const until = isLast ? endDiameter : track.endDiameter;
    const begins = tracks[at - 1]?.untilSeconds ?? 0;
    return {
      name: track.name,
      radiusUsed: (from - until) / 2,
      durationSeconds: (isLast ? durationSeconds : track.untilSeconds) - begins,
    };
  });
}
