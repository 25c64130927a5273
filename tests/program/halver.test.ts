import { expect, test } from 'vitest';
import { bandLimitOf, FIRST_HALVING_TAPS } from '../../src/analysis/band-limit.js';
import { halveRate } from '../../src/analysis/half-band.js';
import { joinStereo } from '../../src/analysis/stereo.js';
import { Halver } from '../../src/program/halver.js';
import { noise } from '../support/signals.js';

test.each([
  ['44.1 kHz', bandLimitOf(88_200).bandEndTaps],
  ['48 kHz', bandLimitOf(96_000).bandEndTaps],
  ['the first halving', FIRST_HALVING_TAPS],
])('blocks are halved to what the analysis makes of the whole: %s', (_, taps) => {
  const signal = { left: noise(3000, 1, 1), right: noise(3000, 2, 1) };
  const halver = new Halver(taps);
  let { low, high } = halver.push({ left: new Float64Array(0), right: new Float64Array(0) });
  for (let at = 0; at < 3000; at += 7) {
    const halved = halver.push({
      left: signal.left.slice(at, at + 7),
      right: signal.right.slice(at, at + 7),
    });
    low = joinStereo(low, halved.low);
    high = joinStereo(high, halved.high);
  }
  const [left, right] = [halveRate(signal.left, taps), halveRate(signal.right, taps)];
  const count = low.left.length;
  expect(count).toBeGreaterThan(1400);
  // As much as rounding to f32 at each of some fifty steps leaves of samples up to 1.
  expect(low.left).toBeWithin(left.low.slice(0, count), 5e-7);
  expect(low.right).toBeWithin(right.low.slice(0, count), 5e-7);
  expect(high.left).toBeWithin(left.high.slice(0, count), 5e-7);
  expect(high.right).toBeWithin(right.high.slice(0, count), 5e-7);
});

test('blocks do not show', () => {
  const signal = { left: noise(3000, 1, 1), right: noise(3000, 2, 1) };
  const whole = new Halver(FIRST_HALVING_TAPS).push(signal).low;
  const halver = new Halver(FIRST_HALVING_TAPS);
  let low = halver.push({ left: new Float64Array(0), right: new Float64Array(0) }).low;
  for (let at = 0; at < 3000; at += 11) {
    const [left, right] = [signal.left.slice(at, at + 11), signal.right.slice(at, at + 11)];
    low = joinStereo(low, halver.push({ left, right }).low);
  }
  expect(low).toEqual(whole);
});
