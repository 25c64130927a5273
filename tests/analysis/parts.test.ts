import { describe, expect, test } from 'vitest';
import { partsOf } from '../../src/analysis/parts.js';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import type { Settings } from '../../src/settings.js';
import { settingsWith } from './summary-of.js';

const pcm = (sampleRate: number): SampleFormat => ({
  encoding: 'pcm',
  bitDepth: 24,
  channels: 2,
  sampleRate,
});

const RATES = [44_100, 48_000, 88_200, 96_000, 176_400, 192_000];

const SETTINGS: readonly Partial<Settings>[] = [
  {},
  { rpm: 45 },
  { rpm: 33.29, speedTolerance: 0.01 },
  { rpm: 10, subsonicHz: 1, ellipticalHz: 10 },
  { rpm: 100, subsonicHz: 100, speedFactor: 0.5 },
];

describe.each(SETTINGS)('parts of 20 minutes and a bit, %o', (changes) => {
  const settings = settingsWith(changes);
  const turn = 60 / settings.rpm;
  const corners = [settings.subsonicHz, settings.ellipticalHz].filter((corner) => corner !== null);
  const settling = corners.reduce((sum, hz) => sum + (5 * settings.speedFactor) / hz, 0);

  test.each(RATES)('at %i Hz are even in number, meet, and last about two minutes', (rate) => {
    const frames = Math.round(1203.4567 * rate);
    const parts = partsOf(pcm(rate), frames, settings);
    expect(parts.length).toBe(10);
    expect(parts[0]).toMatchObject({ firstQuarter: 0, firstFrame: 0, readFrom: 0 });
    expect(parts.at(-1)).toMatchObject({ endFrame: frames, readUntil: frames });
    for (const [index, part] of parts.entries()) {
      const next = parts[index + 1];
      const quarters = (part.endQuarter - part.firstQuarter) * (turn / 4);
      // The last has the silent turn, and what its own last turn lacks.
      expect(quarters).toBeWithin(120.346, next === undefined ? 2 * turn : turn / 4);
      if (next === undefined) continue;
      expect(next.firstQuarter).toBe(part.endQuarter);
      expect(next.firstFrame).toBe(part.endFrame);
    }
  });

  test.each(RATES)('at %i Hz hear a turn and the settling before their quarters', (rate) => {
    const parts = partsOf(pcm(rate), 1203 * rate, settings);
    for (const part of parts.slice(1)) {
      const begins = part.firstQuarter * (turn / 4) * rate;
      const needed = (turn * (1 + settings.speedTolerance) + settling) * rate;
      expect(begins - part.readFrom).toBeGreaterThan(needed);
      expect(begins - part.readFrom).toBeLessThan(needed + (0.83 + settling + 0.7) * rate);
      // 0.8 s are whole frames of the low band and whole 100 ms at all rates.
      expect(part.readFrom % Math.round(0.8 * rate)).toBe(0);
      expect(part.firstFrame % (rate / 10)).toBe(0);
      expect(begins - part.firstFrame).toBeGreaterThanOrEqual(-1e-6);
      expect(begins - part.firstFrame).toBeLessThan(rate / 10 + 1e-6);
    }
  });

  test.each(RATES)('at %i Hz hear on to the end of their quarters and frames', (rate) => {
    const frames = 1203 * rate;
    for (const part of partsOf(pcm(rate), frames, settings).slice(0, -1)) {
      expect(part.readUntil).toBeGreaterThan(part.endQuarter * (turn / 4) * rate);
      expect(part.readUntil).toBeGreaterThan(part.endFrame);
      expect(part.readUntil).toBeLessThanOrEqual(frames);
    }
  });
});

test.each([
  { seconds: 1, parts: 1 },
  { seconds: 119, parts: 1 },
  { seconds: 121, parts: 2 },
  { seconds: 240, parts: 2 },
  { seconds: 359, parts: 2 },
  { seconds: 361, parts: 4 },
  { seconds: 3600, parts: 30 },
])('$seconds s are $parts parts', ({ seconds, parts }) => {
  expect(partsOf(pcm(44_100), seconds * 44_100, settingsWith())).toHaveLength(parts);
});

test.each([8000, 22_050, 37_800, 64_000])('%i Hz, of neither family, stay whole', (rate) => {
  const frames = 1000 * rate;
  const parts = partsOf(pcm(rate), frames, settingsWith());
  expect(parts).toHaveLength(1);
  expect(parts[0]).toMatchObject({
    firstFrame: 0,
    endFrame: frames,
    readFrom: 0,
    readUntil: frames,
  });
});

test('there are no more parts than quarters', () => {
  const parts = partsOf(pcm(44_100), 44_100, settingsWith(), 0.1);
  // One second is 2.2 quarters of 0.45 s.
  expect(parts.map(({ firstQuarter }) => firstQuarter)).toEqual([0, 1, 2]);
  expect(parts.at(-1)?.endQuarter).toBe(8);
});

test('a part is plain data', () => {
  const parts = partsOf(pcm(96_000), 300 * 96_000, settingsWith());
  expect(structuredClone(parts)).toEqual(parts);
});
