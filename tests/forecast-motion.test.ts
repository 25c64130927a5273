// A side read back from its saved motion against the same side read from its audio.
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { forecastMotion } from '../src/forecast-motion.js';
import type { ForecastedFile } from '../src/forecast-result.js';
import { forecastFile } from '../src/forecast-side.js';
import { BAKED_SETTINGS, bakedSettings } from '../src/motion-file/baked-settings.js';
import { decodeMotion } from '../src/motion-file/decode-motion.js';
import { encodeMotion } from '../src/motion-file/encode-motion.js';
import { motionToSave } from '../src/motion-file/motion-to-save.js';
import type { SavedMotion } from '../src/motion-file/saved-motion.js';
import { resolveProfile } from '../src/profile/resolve-profile.js';
import type { Settings } from '../src/settings.js';
import { emptyMotion } from './support/empty-motion.js';
import { forecastText } from './support/forecast-text.js';
import { savedMotion } from './support/saved-motion.js';

const FOLDER = fileURLToPath(new URL('reference-signals/closed-forms/', import.meta.url));
const SIGNALS = readdirSync(FOLDER).filter((name) => name.endsWith('.wav'));
const REQUEST = { levelDb: 0, planner: 'turn-ahead', keepMotion: true } as const;
const SETTINGS = resolveProfile();

/** A forecast's motion through a motion file's bytes. */
function savedFrom(file: ForecastedFile, path: string): SavedMotion {
  return decodeMotion(path, encodeMotion(motionToSave(file)));
}

test('there are signals to compare', () => {
  expect(SIGNALS.length).toBeGreaterThan(5);
});

describe.each(SIGNALS)('%s', (name) => {
  test('gives the same JSON from its motion, at other levels, pitches and discs too', async () => {
    const heard = await forecastFile(`${FOLDER}${name}`, SETTINGS, REQUEST);
    const saved = savedFrom(heard, 'kept/x.motion');
    const read = forecastMotion(saved, SETTINGS, REQUEST);
    expect(read.readFrom).toBe('motion');
    expect(read.sources[0]?.path).toBe('kept/x.motion');
    expect(read.motion).toEqual(heard.motion);
    expect(forecastText(read)).toBe(forecastText(heard));

    const other: Settings = { ...SETTINGS, basePitch: 150e-6, executes: 'plan', landMin: 20e-6 };
    const request = { levelDb: 2.5, planner: 'machine' } as const;
    const again = await forecastFile(`${FOLDER}${name}`, other, request);
    expect(forecastText(forecastMotion(saved, other, request))).toBe(forecastText(again));
  });
});

describe('a motion that was saved with other settings', () => {
  const saved = { ...savedMotion(emptyMotion(4)), settings: bakedSettings(SETTINGS) };
  const forecast = (changes: Partial<Settings>) =>
    forecastMotion(saved, { ...SETTINGS, ...changes }, REQUEST);

  test.each([
    [{ rpm: 45 }, 'rpm 33.33333, expected 45'],
    [{ speedTolerance: 0.002 }, 'speedTolerance 0.001, expected 0.002'],
    [{ speedFactor: 0.5 }, 'speedFactor 1, expected 0.5'],
    [{ referenceVelocity: 0.08 }, 'referenceVelocity 7cm/s, expected 8cm/s'],
    [{ referenceDbfs: -12 }, 'referenceDbfs -10, expected -12'],
    [{ polarity: -1 }, 'polarity 1, expected -1'],
    [{ swapChannels: true }, 'swapChannels false, expected true'],
    [{ channelBalanceDb: 0.1 }, 'channelBalanceDb 0, expected 0.1'],
    [{ subsonicHz: 15 }, 'subsonicHz 20, expected 15'],
    [{ ellipticalHz: 150 }, 'ellipticalHz none, expected 150'],
    [{ lowBandHz: 250 }, 'lowBandHz 300, expected 250'],
  ] as const)('is refused: %o', (changes, words) => {
    const message = `invented.motion: found motion saved with ${words} as in the profile; forecast the sound again`;
    expect(() => forecast(changes)).toThrow(
      expect.objectContaining({ code: 'motion-differs', path: 'invented.motion', message }),
    );
  });

  test('is taken where the order of a filter differs that is not there', () => {
    expect(forecast({ ellipticalOrder: 1 }).forecast.turns).toBeGreaterThan(2);
    expect(forecast({ ellipticalOrder: 2 }).forecast.turns).toBeGreaterThan(2);
    const filtered = { ...saved, settings: { ...saved.settings, ellipticalHz: 150 } as const };
    const asked = { ...SETTINGS, ellipticalHz: 150 };
    const order = filtered.settings.ellipticalOrder === 1 ? 2 : 1;
    expect(() => forecastMotion(filtered, { ...asked, ellipticalOrder: order }, REQUEST)).toThrow(
      /ellipticalOrder/,
    );
  });

  test('is taken where a number differs by what a profile rounds', () => {
    const velocity = SETTINGS.referenceVelocity * (1 + 1e-12);
    expect(forecast({ referenceVelocity: velocity }).forecast.turns).toBeGreaterThan(2);
  });
});

test('every setting that the pass reads is among those a motion is saved with', async () => {
  const path = `${FOLDER}left-only.wav`;
  const motionWith = async (settings: Settings) =>
    (await forecastFile(path, settings, REQUEST)).motion;
  const plain = await motionWith(SETTINGS);
  // A whole number grows by one, as some count turns; another by one per cent; a choice is turned.
  const changed = (value: unknown) => {
    if (typeof value === 'boolean') return !value;
    if (typeof value !== 'number') return value;
    return Number.isInteger(value) ? value + 1 : 1.01 * value;
  };
  for (const [name, value] of Object.entries(SETTINGS)) {
    const other = changed(value);
    if (other === value || BAKED_SETTINGS.some((baked) => baked === name)) continue;
    expect([name, await motionWith({ ...SETTINGS, [name]: other })]).toEqual([name, plain]);
  }
});

test('a file that breaks off is still told as one from its motion', async () => {
  const file = await forecastFile(`${FOLDER}left-only.wav`, SETTINGS, REQUEST);
  const broken = { ...motionToSave(file), truncated: true };
  const again = forecastMotion(broken, SETTINGS, REQUEST);
  expect(again.forecast.findings.map(({ id }) => id)).toContain('truncated');
  expect(motionToSave(again)).toEqual(broken);
});

test('a forecast that did not keep its motion, or has several sources, has none to save', async () => {
  const file = await forecastFile(`${FOLDER}left-only.wav`, SETTINGS, REQUEST);
  expect(() => motionToSave({ ...file, motion: null })).toThrow(RangeError);
  expect(() => motionToSave({ ...file, sources: [...file.sources, ...file.sources] })).toThrow(
    RangeError,
  );
});
