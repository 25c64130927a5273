import type { HandTrack } from '../model/side-plan-input.js';
import type { Settings } from '../settings.js';
import type { Seconds } from '../units.js';
import { fixed, levelText } from './length-text.js';

/** What is done to a track's level, and from when on; program time. */
export interface TrimStep {
  readonly atSeconds: Seconds;
  readonly what: string;
}

/**
 * The trims and fades of a sheet in time order, for whoever cuts from the files as they came: a trim
 * wherever it is another than that of the track before, a fade where it begins, lasting as long as
 * the lathe does.
 */
export function trimSteps(
  tracks: readonly HandTrack[],
  { speedFactor }: Settings,
): readonly TrimStep[] {
  const lasts = (seconds: Seconds) => `${Number(fixed(seconds / speedFactor, 2))} s`;
  const gains = tracks.map(({ trim }) => trim?.gainDb ?? 0);
  return tracks
    .flatMap(({ fromSeconds, untilSeconds, trim }, at): TrimStep[] => {
      const { gainDb = 0, fadeInSeconds = 0, fadeOutSeconds = 0 } = trim ?? {};
      const isOther = gainDb !== (gains[at - 1] ?? 0);
      return [
        ...(isOther ? [{ atSeconds: fromSeconds, what: `trim ${trimText(gainDb)}` }] : []),
        ...(fadeInSeconds > 0
          ? [{ atSeconds: fromSeconds, what: `fade in over ${lasts(fadeInSeconds)}` }]
          : []),
        ...(fadeOutSeconds > 0
          ? [
              {
                atSeconds: untilSeconds - fadeOutSeconds,
                what: `fade out over ${lasts(fadeOutSeconds)}`,
              },
            ]
          : []),
      ];
    })
    .toSorted((one, other) => one.atSeconds - other.atSeconds);
}

/** A trim in hundredths of a decibel is told so. */
function trimText(gainDb: number): string {
  const tenths = gainDb * 10;
  return levelText(gainDb, Math.abs(tenths - Math.round(tenths)) > 1e-6 ? 1 : 0);
}
