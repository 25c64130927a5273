// How the lathe takes the channels: physics.md, sections 1 and 2, by hand.
import { expect, test } from 'vitest';
import { fullScaleVelocity, wire, wiringOf } from '../../src/analysis/program-level.js';
import { settingsWith } from './summary-of.js';

const PROGRAM = { left: Float64Array.of(1, 2), right: Float64Array.of(10, 20) };

test('7 cm/s lateral at −10 dBFS are 15.65 cm/s of one wall at full scale', () => {
  // 7/√2 · 10^(10/20), by hand.
  const settings = settingsWith({ referenceVelocity: 0.07, referenceDbfs: -10 });
  expect(fullScaleVelocity(settings)).toBeWithin(0.156525, 0.0000005);
});

test('7.07 cm/s lateral at 0 dBFS are 5 cm/s of one wall', () => {
  const settings = settingsWith({ referenceVelocity: 0.070711, referenceDbfs: 0 });
  expect(fullScaleVelocity(settings)).toBeWithin(0.05, 1e-6);
});

test('as a lathe comes, the channels go where they belong, untouched', () => {
  const wiring = wiringOf(settingsWith());
  expect(wire(PROGRAM, wiring)).toEqual(PROGRAM);
});

test('swapped, left is cut on the right', () => {
  const { left, right } = wire(PROGRAM, wiringOf(settingsWith({ swapChannels: true })));
  expect(left).toEqual(PROGRAM.right);
  expect(right).toEqual(PROGRAM.left);
});

test('a polarity of −1 turns both', () => {
  const { left, right } = wire(PROGRAM, wiringOf(settingsWith({ polarity: -1 })));
  expect(left).toBeWithin([-1, -2], 0);
  expect(right).toBeWithin([-10, -20], 0);
});

test('a balance of 2 dB is 1 dB up on the left and 1 dB down on the right', () => {
  const { left, right } = wire(PROGRAM, wiringOf(settingsWith({ channelBalanceDb: 2 })));
  // 10^(1/20) = 1.122018, 10^(−1/20) = 0.891251.
  expect(left[0]).toBeWithin(1.122018, 0.0000005);
  expect(right[0]).toBeWithin(8.91251, 0.000005);
});

test('the balance is of the walls, after the swap', () => {
  const settings = settingsWith({ channelBalanceDb: 2, swapChannels: true });
  const { left } = wire(PROGRAM, wiringOf(settings));
  expect(left[0]).toBeWithin(11.22018, 0.000005);
});
