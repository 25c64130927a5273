// Doubling the steps of a signal and doubling the signal are the same filter.
import { expect, test } from 'vitest';
import { bandLimitOf } from '../../src/analysis/band-limit.js';
import { doubleRate, doubleSteps, stepTapsOf } from '../../src/analysis/half-band.js';
import { noise } from '../support/signals.js';

test.each([44_100, 48_000])('doubled steps add up to the doubled signal, %i Hz', (rate) => {
  const { bandEndTaps } = bandLimitOf(rate);
  const signal = new Float64Array(400);
  signal.set(noise(300, 5, 0.5).map(Math.fround), 50);
  const steps = signal.map((value, n) => value - (signal[n - 1] ?? 0));
  let level = 0;
  const added = doubleSteps(steps, stepTapsOf(bandEndTaps)).map((step) => {
    level += step;
    return level;
  });
  // Every frame's steps are rounded to f32 once, and the errors of all add up.
  expect(added).toBeWithin(doubleRate(signal, bandEndTaps), 800 * 2 ** -25);
});
