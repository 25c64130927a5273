import type { Settings } from '../settings.js';

/** The settings that the pass over the audio reads: a change of them asks for the audio again. */
export const BAKED_SETTINGS = [
  'rpm',
  'speedTolerance',
  'speedFactor',
  'referenceVelocity',
  'referenceDbfs',
  'polarity',
  'swapChannels',
  'channelBalanceDb',
  'subsonicHz',
  'ellipticalHz',
  'ellipticalOrder',
  'lowBandHz',
] as const satisfies readonly (keyof Settings)[];

export type BakedSetting = (typeof BAKED_SETTINGS)[number];
export type BakedSettings = Pick<Settings, BakedSetting>;

/** What a profile keeps of a number that it writes and reads again is good to 1e-12. */
const SAME = 1e-9;

/** The part of the settings that goes into a motion summary. */
export function bakedSettings(settings: Settings): BakedSettings {
  return {
    rpm: settings.rpm,
    speedTolerance: settings.speedTolerance,
    speedFactor: settings.speedFactor,
    referenceVelocity: settings.referenceVelocity,
    referenceDbfs: settings.referenceDbfs,
    polarity: settings.polarity,
    swapChannels: settings.swapChannels,
    channelBalanceDb: settings.channelBalanceDb,
    subsonicHz: settings.subsonicHz,
    ellipticalHz: settings.ellipticalHz,
    ellipticalOrder: settings.ellipticalOrder,
    lowBandHz: settings.lowBandHz,
  };
}

/** The first setting that makes another motion out of the same audio; null if none does. */
export function differingSetting(saved: BakedSettings, asked: BakedSettings): BakedSetting | null {
  const differs = (name: BakedSetting): boolean => {
    // Without a filter its order makes no difference.
    if (name === 'ellipticalOrder' && saved.ellipticalHz === null) return false;
    return !isSame(saved[name], asked[name]);
  };
  return BAKED_SETTINGS.find(differs) ?? null;
}

function isSame(saved: number | boolean | null, asked: number | boolean | null): boolean {
  if (typeof saved !== 'number' || typeof asked !== 'number') return saved === asked;
  return Math.abs(saved - asked) <= SAME * Math.max(Math.abs(saved), Math.abs(asked));
}
