import type { PlannedSide } from '../planned-side.js';
import { closeLate, openEarly } from '../slew.js';

/** Base pitch throughout; where it is set anew by hand it opens early and closes late. */
export function fixedPitch({ basePitch, settings }: PlannedSide, pitch: Float64Array): void {
  pitch.set(basePitch);
  openEarly(pitch, settings.pitchOpenSlew);
  closeLate(pitch, settings.pitchCloseSlew);
}
