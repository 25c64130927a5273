import type { ForecastedFile } from '../forecast-result.js';
import { bestSplit, radiusOf, type Split, type SplitTrack } from '../model/best-split.js';
import type { Metres } from '../units.js';

/** The sides of a record that are unbalanced, and how to part their tracks instead. */
export interface SideSplit extends Split {
  /** What each side takes as it is. */
  readonly takes: readonly Metres[];
  /** Of every track in running order. */
  readonly names: readonly string[];
}

/**
 * The best split of a record's sides.
 * @returns null where they are balanced, are not all of tracks, or are of different discs or speeds
 */
export function sideSplit(files: readonly ForecastedFile[]): SideSplit | null {
  const [first] = files;
  const isOneKind = files.every(
    ({ settings, forecast }) =>
      (forecast.tracks ?? []).length > 0 &&
      settings.disc === first?.settings.disc &&
      settings.rpm === first.settings.rpm,
  );
  if (files.length < 2 || !isOneKind) return null;
  const sides = files.map(tracksToSplit);
  const split = bestSplit(sides);
  if (split === null) return null;
  return { ...split, takes: sides.map(radiusOf), names: sides.flat().map(({ name }) => name) };
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
