import type { SourceFacts } from '../../src/model/forecast-types.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import type { Settings } from '../../src/settings.js';

/** furrow's default profile with what a test wants to be different, in SI. */
export function settingsWith(changes: Partial<Settings> = {}): Settings {
  return { ...resolveProfile(), ...changes };
}

/** A lathe without a fault, so that land is what geometry says. */
export const EXACT: Partial<Settings> = {
  speedTolerance: 0,
  depthTolerance: 0,
  pitchTolerance: 0,
  timingTolerance: 0,
};

/** A file that has nothing against it. */
export const SOUND_SOURCE: SourceFacts = { sampleRate: 44_100, channels: 2, truncated: false };
