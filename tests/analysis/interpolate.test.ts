// Values between frames, against sines that are known everywhere.
import { describe, expect, test } from 'vitest';
import {
  type Frames,
  interpolationTaps,
  maximumBetween,
  peakNear,
  valueAt,
} from '../../src/analysis/interpolate.js';
import { delaySignal } from '../../src/analysis/turn-delay.js';
import { seeded } from '../support/signals.js';

const RATES = [88_200, 96_000];

const sine =
  (hz: number, rate: number, phase = 0): Frames =>
  (frame) =>
    Math.sin((2 * Math.PI * hz * frame) / rate + phase);

test('a whole place takes the frame itself, and taps sum to 1', () => {
  expect(interpolationTaps(0)[5]).toBeWithin(1, 1e-12);
  for (const fraction of [0, 0.1, 0.5, 0.77, 1]) {
    const sum = interpolationTaps(fraction).reduce((total, tap) => total + tap, 0);
    expect(sum).toBeWithin(1, 1e-14);
  }
});

describe.each(RATES)('at %i Hz', (rate) => {
  test.each([
    [100, 1e-4],
    [10_000, 3e-4],
    [20_000, 5e-4],
  ])('a sine of %i Hz is known between its frames to %f', (hz, error) => {
    // The table is linear between 64 phases: (2πf/rate/64)²/8 are up to 6e-5 more.
    const next = seeded(9);
    for (let n = 0; n < 200; n++) {
      const place = 100 * next();
      const exact = Math.sin((2 * Math.PI * hz * place) / rate + 0.4);
      expect(valueAt(sine(hz, rate, 0.4), place)).toBeWithin(exact, error);
    }
  });

  test('the peaks of 20 kHz between frames are found to 0.1 %, whatever the phase', () => {
    for (let step = 0; step < 50; step++) {
      const signal = sine(20_000, rate, (step / 50) * 2 * Math.PI);
      // The frames alone miss up to 28 % of it.
      expect(maximumBetween(signal, 50, 60)).toBeWithin(1, 0.001);
    }
  });

  test('a climb from the frame beside a peak gets to its top', () => {
    // A peak a third of a frame after frame 40.
    const angle = (2 * Math.PI * 5000) / rate;
    const signal: Frames = (frame) => 3 * Math.cos(angle * (frame - 40 - 1 / 3));
    expect(signal(40)).toBeLessThan(3 * 0.9999);
    const peak = peakNear(signal, 40);
    expect(peak.value).toBeWithin(3, 3e-4);
    // The parabola is not the sine: 20 ns.
    expect(peak.place).toBeWithin(40 + 1 / 3, 0.002);
  });

  test('a peak counts where it is, not where the frame next to it is', () => {
    const angle = (2 * Math.PI * 5000) / rate;
    const signal: Frames = (frame) => Math.cos(angle * (frame - 40.3));
    const beside = Math.cos(angle * 0.1);
    expect(maximumBetween(signal, 38, 40.2)).toBeWithin(beside, 2e-4);
    expect(maximumBetween(signal, 40.4, 43)).toBeWithin(beside, 2e-4);
    expect(maximumBetween(signal, 40.2, 40.4)).toBeWithin(1, 2e-4);
  });

  test('a maximum between two places counts both ends and nothing outside', () => {
    const rising: Frames = (frame) => frame / 100;
    expect(maximumBetween(rising, 10.25, 20.75)).toBeWithin(0.2075, 1e-6);
    const falling: Frames = (frame) => -frame / 100;
    expect(maximumBetween(falling, 10.25, 20.75)).toBeWithin(-0.1025, 1e-6);
  });

  test.each([0.25, 0.5, 0.9])(
    'a delay of 7 frames and %f is that of a sine of 20 kHz',
    (fraction) => {
      const signal = Float64Array.from({ length: 200 }, (_, n) => sine(20_000, rate)(n));
      const delayed = delaySignal(signal, 7 + fraction);
      const exact = signal.map((_, n) => sine(20_000, rate)(n - 7 - fraction));
      expect(delayed.subarray(20, 190)).toBeWithin(exact.subarray(20, 190), 5e-4);
    },
  );
});

test('a whole delay moves frames as they are, and silence comes before them', () => {
  const signal = Float64Array.of(1, 2, 3, 4, 5);
  expect(delaySignal(signal, 2)).toEqual(Float64Array.of(0, 0, 1, 2, 3));
  expect(delaySignal(signal, 0)).toEqual(signal);
});
