import { landTolerance } from '../../../../../model/planned-side.js';
import type { Settings } from '../../../../../settings.js';
import { type Ink, mix, type Rgb } from '../paint/ink.js';

/** A land and the ink it has; between two the ink is mixed. */
interface Stop {
  readonly land: number;
  readonly tone: Rgb;
}

export interface LandTone {
  readonly toneOf: (land: number) => Rgb;
  /** Lands that the legend names, m, ascending: no land, landMin, an unmodulated groove’s, plenty. */
  readonly named: readonly [none: number, least: number, unmodulated: number, plenty: number];
}

/** Keeps stops apart that a profile puts on the same land. */
const APART = 1e-9;

/**
 * Ink by land, more of it the less land: paper where there is plenty, then a cool ink that deepens
 * towards landMin, a warm one under it, the warning ink under 0. Two steps, at landMin and at 0, and
 * no other, so that they are seen as lines. Lightness goes from the paper's towards the ink's all the
 * way, so that grey tells the same.
 */
export function landTone(ink: Ink, settings: Settings): LandTone {
  const { landMin, basePitch, baseWidth } = settings;
  const open = basePitch - baseWidth - landTolerance(settings);
  const unmodulated = Math.max(open, 1.4 * landMin);
  const plenty = 2.5 * unmodulated;
  const stops: Stop[] = [
    { land: -landMin - APART, tone: mix(ink.overcut, ink.ink, 0.65) },
    { land: -APART, tone: mix(ink.overcut, ink.ink, 0.35) },
    { land: 0, tone: mix(ink.landLow, ink.overcut, 0.25) },
    { land: landMin - APART, tone: ink.landLow },
    { land: landMin, tone: mix(ink.landGood, ink.ink, 0.1) },
    { land: unmodulated, tone: mix(ink.landGood, ink.paper, 0.45) },
    { land: plenty, tone: ink.paper },
  ];
  return {
    toneOf: (land) => toneBetween(stops, land, ink.paper),
    named: [0, landMin, unmodulated, plenty],
  };
}

function toneBetween(stops: readonly Stop[], land: number, beyond: Rgb): Rgb {
  let below: Stop | null = null;
  for (const stop of stops) {
    if (land < stop.land) {
      if (below === null) return stop.tone;
      return mix(below.tone, stop.tone, (land - below.land) / (stop.land - below.land));
    }
    below = stop;
  }
  return beyond;
}
