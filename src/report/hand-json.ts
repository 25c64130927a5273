import type { HandSettings, HandTrack } from '../model/side-plan-input.js';
import type { HandJson } from './hand-schema.js';
import { roundDb, roundSeconds, toUm } from './numbers.js';

/** Hand settings as the output writes them; of the tracks only how they are trimmed. */
export function handToJson({ basePitch, baseWidth, bands, tracks }: HandSettings): HandJson {
  const trims = tracks.flatMap(trimToJson);
  return {
    basePitch: basePitch.map(({ fromSeconds, pitch }) => ({
      fromSeconds: roundSeconds(fromSeconds),
      pitchUm: toUm(pitch),
    })),
    baseWidth: baseWidth.map(({ fromSeconds, width }) => ({
      fromSeconds: roundSeconds(fromSeconds),
      widthUm: toUm(width),
    })),
    bands: bands.map(({ fromSeconds, untilSeconds, pitch }) => ({
      fromSeconds: roundSeconds(fromSeconds),
      untilSeconds: roundSeconds(untilSeconds),
      pitchUm: toUm(pitch),
    })),
    ...(trims.length === 0 ? {} : { trims }),
  };
}

function trimToJson({ fromSeconds, untilSeconds, trim }: HandTrack) {
  if (trim === undefined) return [];
  return [
    {
      fromSeconds: roundSeconds(fromSeconds),
      untilSeconds: roundSeconds(untilSeconds),
      gainDb: roundDb(trim.gainDb),
      fadeInSeconds: roundSeconds(trim.fadeInSeconds),
      fadeOutSeconds: roundSeconds(trim.fadeOutSeconds),
    },
  ];
}
