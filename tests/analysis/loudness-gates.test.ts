// Source: ITU-R BS.1770-4, annex 1: blocks of 400 ms that overlap by 75 %, an absolute gate at
// −70 LKFS, a relative one 10 LU under the mean of what passed the first. Values by hand.
import { expect, test } from 'vitest';
import { integratedLoudness } from '../../src/analysis/loudness.js';

/** Power of a step of 100 ms that measures so many LUFS. */
const power = (lufs: number): number => 10 ** ((lufs + 0.691) / 10);
const steps = (lufs: number, count: number): number[] => new Array<number>(count).fill(power(lufs));

test('a steady loudness is told as it is', () => {
  expect(integratedLoudness(steps(-23, 30))).toBeWithin(-23, 1e-9);
});

test('silence, and less than 400 ms, have none', () => {
  expect(integratedLoudness([])).toBe(null);
  expect(integratedLoudness(new Array<number>(50).fill(0))).toBe(null);
  expect(integratedLoudness(steps(-10, 3))).toBe(null);
  expect(integratedLoudness(steps(-10, 4))).toBeWithin(-10, 1e-9);
});

test('the absolute gate shuts at −70 LUFS', () => {
  expect(integratedLoudness(steps(-70.1, 30))).toBe(null);
  expect(integratedLoudness(steps(-69.9, 30))).toBeWithin(-69.9, 1e-9);
});

test('what is 20 LU softer is gated, but for the blocks that reach into both', () => {
  // Three blocks hold 3, 2 and 1 loud steps of four; the fourth part of a loud step and more is
  // −6.0 LU, over the gate: (27 + 0.75 + 0.5 + 0.25) loud blocks over 30, and their soft remains.
  const soft = power(-43) / power(-23);
  const mixed = 1.5 * soft + 1.5;
  const expected = -23 + 10 * Math.log10((27 + mixed) / 30);
  expect(integratedLoudness([...steps(-23, 30), ...steps(-43, 30)])).toBeWithin(expected, 1e-9);
});

test('what is 6 LU softer is not', () => {
  const blocks = 57;
  const soft = power(-29) / power(-23);
  const expected = -23 + 10 * Math.log10((27 + 1.5 + 1.5 * soft + 27 * soft) / blocks);
  expect(integratedLoudness([...steps(-23, 30), ...steps(-29, 30)])).toBeWithin(expected, 1e-9);
});

test('the relative gate stands on what passed the absolute one', () => {
  // With the silence in its mean the gate would lie 3 LU lower and let the −34 LUFS pass.
  const program = [...steps(-23, 100), ...new Array<number>(105).fill(0), ...steps(-34.5, 10)];
  const loud = integratedLoudness(program);
  const without = integratedLoudness([...steps(-23, 100), ...new Array<number>(105).fill(0)]);
  expect(loud).toBe(without);
});
