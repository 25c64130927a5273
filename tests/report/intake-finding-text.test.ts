import { describe, expect, test } from 'vitest';
import type { RuleBreach } from '../../src/intake/broken-rule.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { findingText } from '../../src/report/finding-text.js';
import { intakeFindingText } from '../../src/report/intake-finding-text.js';
import { findingWith } from '../support/forecast-fixture.js';

const settings = resolveProfile();
const metric = { settings, units: 'metric' } as const;

const longest = { id: 'rule-longest', found: 1290.53, most: 1320, disc: 12, rpm: 100 / 3 } as const;
const silence = { found: 3.25, silenceDbfs: -60 } as const;

describe('a broken rule says what was found and what the house wants', () => {
  test.each<[RuleBreach, string]>([
    [{ id: 'rule-container', found: 'RIFF', allowed: ['FLAC'] }, 'found WAV, allowed FLAC.'],
    [{ id: 'rule-container', found: 'RF64', allowed: ['AIFF'] }, 'found RF64, allowed AIFF.'],
    [
      { id: 'rule-rate', found: 22_050, allowed: [44_100, 96_000] },
      'found 22.05 kHz, allowed 44.1 kHz, 96 kHz.',
    ],
    [
      { id: 'rule-depth', found: { encoding: 'float', bitDepth: 32 }, allowed: [16, 24] },
      'found 32 bit float, allowed 16 bit, 24 bit.',
    ],
    [
      { id: 'rule-depth', found: { encoding: 'pcm', bitDepth: 16 }, allowed: [24, 'float'] },
      'found 16 bit, allowed 24 bit, float.',
    ],
    [
      { id: 'rule-name', found: 'x.wav', allowed: '[A-Z]+' },
      'found x.wav, expected a match of "[A-Z]+".',
    ],
    [
      { ...longest, fromLevelDb: null },
      'found 21 min 30.5 s, allowed 22 min on 12-inch at 33.33 rpm.',
    ],
    [
      { ...longest, rpm: 45, fromLevelDb: 2 },
      'found 21 min 30.5 s, allowed 22 min on 12-inch at 45 rpm from +2.0 dB on.',
    ],
    [
      { id: 'rule-land', found: 4.9e-6, least: 12.7e-6 },
      'found 4.9 µm, at least 12.7 µm is asked for.',
    ],
    [
      { id: 'rule-vertical', found: 30e-6, most: 25e-6 },
      'found 30.0 µm, at most 25.0 µm is allowed.',
    ],
    [
      { ...silence, id: 'rule-head', least: null, most: 2 },
      'silence before the sound: found 3.25 s under -60.0 dBFS, at most 2 s is allowed.',
    ],
    [
      { ...silence, id: 'rule-tail', least: 4, most: null },
      'silence behind the sound: found 3.25 s under -60.0 dBFS, at least 4 s is asked for.',
    ],
    [{ ...silence, id: 'rule-tail', least: 4, most: 5 }, '4 s to 5 s is asked for.'],
  ])('%j', (breach, text) => {
    const { message, remedy } = intakeFindingText(
      { ...breach, severity: 'fault', atSeconds: null },
      metric,
    );
    expect(message).toContain(text);
    expect(message).toMatch(/^House rule on /);
    expect(remedy).toMatch(/\.$/);
  });

  test('a value that rounds to its limit is told with the digits that tell the two apart', () => {
    const land = { id: 'rule-land', found: 12.698e-6, least: 12.7e-6 } as const;
    const { what } = intakeFindingText({ ...land, severity: 'fault', atSeconds: null }, metric);
    expect(what).toContain('found 12.698 µm, at least 12.700 µm');
    const long = { ...longest, found: 1320.0004, fromLevelDb: null };
    const told = intakeFindingText({ ...long, severity: 'fault', atSeconds: null }, metric).what;
    expect(told).toContain('found 22 min 0.0004 s, allowed 22 min');
  });

  test.each<[string, RuleBreach, RegExp]>([
    ['too long at any level', { ...longest, fromLevelDb: null }, /^Move a track.*shorter side\.$/],
    ['too long from a level on', { ...longest, fromLevelDb: 2 }, /take the level down/],
    ['too much silence', { ...silence, id: 'rule-head', least: 1, most: 2 }, /^Trim /],
    ['too little silence', { ...silence, id: 'rule-tail', least: 4, most: 5 }, /^Lengthen /],
  ])('%s: the remedy is one that helps', (_, breach, expected) => {
    const { remedy } = intakeFindingText({ ...breach, severity: 'fault', atSeconds: null }, metric);
    expect(remedy).toMatch(expected);
    expect(/level/.test(remedy)).toBe(breach.id === 'rule-longest' && breach.fromLevelDb !== null);
  });

  test('where it is comes first', () => {
    const land = { id: 'rule-land', found: -1e-6, least: 1e-6, severity: 'fault' } as const;
    const { message } = intakeFindingText({ ...land, atSeconds: 61.2 }, metric);
    expect(message).toMatch(/^01:01\.2, turn 34: House rule on the least land/);
  });
});

test("a forecast's finding has its own words", () => {
  expect(intakeFindingText(findingWith(), metric)).toEqual(findingText(findingWith(), metric));
});
