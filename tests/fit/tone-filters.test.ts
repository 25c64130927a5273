// The analogue prototypes of both filters are given in closed form; what the bilinear transform
// makes of them is their response at the warped frequency. Outside program: sox, effect
// `equalizer`, whose filter is the same bell.
import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import type { Biquad } from '../../src/analysis/biquad.js';
import { filterBiquad } from '../../src/analysis/biquad.js';
import { bellFilter, shelfFilter } from '../../src/fit/tone-filters.js';
import { needProgram } from '../support/outside-program.js';
import { noise } from '../support/signals.js';

const RATE = 44_100;
const HERTZ = [20, 55, 300, 1000, 3000, 5000, 7100, 9000, 12_000, 18_000];

function responseDb({ b0, b1, b2, a1, a2 }: Biquad, hertz: number): number {
  const w = (2 * Math.PI * hertz) / RATE;
  const power = (c0: number, c1: number, c2: number) =>
    (c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w)) ** 2 +
    (c1 * Math.sin(w) + c2 * Math.sin(2 * w)) ** 2;
  return 10 * Math.log10(power(b0, b1, b2) / power(1, a1, a2));
}

/** s over the filter's own frequency after the bilinear transform. */
function warped(hertz: number, frequency: number): number {
  return Math.tan((Math.PI * hertz) / RATE) / Math.tan((Math.PI * frequency) / RATE);
}

describe('bellFilter', () => {
  it.each([
    [55, -6],
    [7100, -2.5],
  ])('at %d Hz by %d dB is (s² + sA/Q + 1)/(s² + s/(AQ) + 1), Q = 1', (frequency, gainDb) => {
    const a = 10 ** (gainDb / 40);
    const expected = HERTZ.map((hertz) => {
      const s = warped(hertz, frequency);
      return 10 * Math.log10(((1 - s * s) ** 2 + (s * a) ** 2) / ((1 - s * s) ** 2 + (s / a) ** 2));
    });
    const section = bellFilter(frequency, gainDb, RATE);
    expect(HERTZ.map((hertz) => responseDb(section, hertz))).toBeWithin(expected, 1e-8);
    expect(responseDb(section, frequency)).toBeWithin(gainDb, 1e-9);
  });

  it('is the bell of sox equalizer', (context) => {
    needProgram('sox', context);
    const signal = noise(RATE, 7, 0.5);
    const raw = ['-t', 'raw', '-e', 'floating-point', '-b', '64', '-r', String(RATE), '-c', '1'];
    const effect = ['equalizer', '7100', '1q', '-2.5'];
    const { stdout } = spawnSync('sox', [...raw, '-', ...raw, '-', ...effect], {
      input: Buffer.from(signal.buffer),
      maxBuffer: 2 ** 24,
    });
    const filtered = new Float64Array(Uint8Array.from(stdout).buffer);
    const ours = filterBiquad(signal, bellFilter(7100, -2.5, RATE));
    // sox keeps its samples in 32 bits.
    expect(ours).toBeWithin(filtered, 2e-9);
  });
});

describe('shelfFilter', () => {
  it.each([
    [3550, -6],
    [3000, -1],
  ])('at %d Hz by %d dB is A(As² + √(2A)s + 1)/(s² + √(2A)s + A)', (frequency, gainDb) => {
    const a = 10 ** (gainDb / 40);
    const expected = HERTZ.map((hertz) => {
      const s = warped(hertz, frequency);
      const wide = Math.sqrt(2 * a) * s;
      const above = a * a * ((1 - a * s * s) ** 2 + wide ** 2);
      return 10 * Math.log10(above / ((a - s * s) ** 2 + wide ** 2));
    });
    const section = shelfFilter(frequency, gainDb, RATE);
    expect(HERTZ.map((hertz) => responseDb(section, hertz))).toBeWithin(expected, 1e-8);
    expect(responseDb(section, frequency)).toBeWithin(gainDb / 2, 1e-9);
  });
});
