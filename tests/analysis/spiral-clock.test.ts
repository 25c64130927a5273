// A turn is 60/rpm: 1.8 s at 33⅓, 4/3 s at 45 rpm (IEC 60098).
import { describe, expect, test } from 'vitest';
import { begun } from '../../src/analysis/motion.js';
import { binEdge, spiralClock, summaryQuarters } from '../../src/analysis/spiral-clock.js';
import { settingsWith } from './summary-of.js';

describe('a turn is a whole number of frames', () => {
  test.each([
    { rpm: 100 / 3, rate: 88_200, frames: 158_760 },
    { rpm: 100 / 3, rate: 96_000, frames: 172_800 },
    { rpm: 45, rate: 88_200, frames: 117_600 },
    { rpm: 45, rate: 96_000, frames: 128_000 },
  ])('$frames at $rate Hz and $rpm rpm', ({ rpm, rate, frames }) => {
    const clock = spiralClock(settingsWith({ rpm, speedTolerance: 0.001 }), rate);
    expect(clock.turnFrames).toBe(frames);
    expect(clock.turnSeconds).toBeWithin(60 / rpm, 0, 1e-15);
    expect(clock.slackFrames).toBeWithin(frames / 1000, 0, 1e-12);
  });
});

test('also where the speed was typed with ten threes after the point', () => {
  expect(spiralClock(settingsWith({ rpm: 33.3333333333 }), 88_200).turnFrames).toBe(158_760);
});

test('but keeps its fraction at a measured speed', () => {
  // 88 200 · 60 / 33.29 = 158 966.657
  const { turnFrames } = spiralClock(settingsWith({ rpm: 33.29 }), 88_200);
  expect(turnFrames).toBeWithin(158_966.657, 0.0005);
  expect(Number.isInteger(turnFrames)).toBe(false);
});

test('64 bins are a turn, and none drifts over a side', () => {
  const clock = spiralClock(settingsWith({ rpm: 33.29 }), 88_200);
  expect(binEdge(clock, 0)).toBe(0);
  expect(binEdge(clock, 64)).toBe(clock.turnFrames);
  expect(binEdge(clock, 64 * 700)).toBeWithin(700 * clock.turnFrames, 0, 1e-15);
});

test.each([
  { seconds: 1.8, quarters: 8, why: 'one whole turn, and one of silence' },
  { seconds: 1.81, quarters: 12, why: 'a second turn is begun' },
  { seconds: 0.01, quarters: 8, why: 'a turn is begun' },
  { seconds: 18, quarters: 44, why: 'ten turns and one' },
])('$seconds s have $quarters quarters: $why', ({ seconds, quarters }) => {
  expect(summaryQuarters(spiralClock(settingsWith(), 88_200), seconds)).toBe(quarters);
});

test('a length that rounding has made a hair longer has begun nothing more', () => {
  expect(begun(0.1 + 0.2 + 0.7)).toBe(1);
  expect(begun(3 + 1e-12)).toBe(3);
  expect(begun(3.001)).toBe(4);
  expect(begun(0)).toBeWithin(0, 0);
});
