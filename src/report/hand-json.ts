import type { HandSettings } from '../model/side-plan-input.js';
import type { HandJson } from './hand-schema.js';
import { roundSeconds, toUm } from './numbers.js';

/** Hand settings as the output writes them; the tracks are told by themselves. */
export function handToJson({ basePitch, baseWidth, bands }: HandSettings): HandJson {
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
  };
}
