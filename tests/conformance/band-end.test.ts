// The end of the band: flat to 20 kHz, at least 60 dB down from 24.1 kHz (sources of the 44.1 kHz
// family) or 28 kHz (48 kHz family). Source of the figures: physics.md, section 2; measured by
// Fourier sums over what the whole chain makes of tones and impulses.
import { describe, expect, test } from 'vitest';
import { bandLimitOf } from '../../src/analysis/band-limit.js';
import { frequencyResponse, logFrequencies } from '../reference-signals/frequency-response.mjs';
import { tones } from '../support/signals.js';
import { toInternalRate } from '../support/to-internal-rate.js';

const ROWS = [
  { rate: 44_100, stop: 24_100 },
  { rate: 48_000, stop: 28_000 },
  { rate: 88_200, stop: 24_100 },
  { rate: 96_000, stop: 28_000 },
  { rate: 176_400, stop: 24_100 },
  { rate: 192_000, stop: 28_000 },
];
const FRAMES = 4800;

/** Loudest sample away from the ends, where the filters start and stop, dB re the tone's peak. */
function levelAfter(hz: number, rate: number): number {
  const made = toInternalRate(tones([{ hz, amplitude: 1 }], FRAMES, rate), rate);
  const middle = made.subarray(Math.floor(made.length / 4), Math.floor((3 * made.length) / 4));
  return 20 * Math.log10(Math.max(...middle.map(Math.abs)));
}

describe.each(ROWS)('from $rate Hz', ({ rate, stop }) => {
  const { internalRate } = bandLimitOf(rate);

  test('an impulse is flat within 0.01 dB from 20 Hz to 20 kHz', () => {
    const hz = logFrequencies(20, 20_000, 60);
    const impulse = new Float64Array(FRAMES);
    impulse[FRAMES / 2] = rate / internalRate;
    const { db } = frequencyResponse(toInternalRate(impulse, rate), hz, internalRate);
    expect(db).toBeWithin(new Float64Array(hz.length), 0.01);
  });

  test('and linear in phase: as early as late', () => {
    const impulse = new Float64Array(FRAMES);
    impulse[FRAMES / 2] = 1;
    const made = toInternalRate(impulse, rate);
    const centre = (FRAMES / 2 / rate) * internalRate;
    const after = made.subarray(centre + 1, centre + 300);
    const before = made.subarray(centre - 299, centre).toReversed();
    expect(Math.max(...after)).toBeGreaterThan(0.01);
    expect(before).toBeWithin(after, 1e-15);
  });

  test(`an impulse is 60 dB down from ${stop} Hz on`, () => {
    const impulse = new Float64Array(FRAMES);
    impulse[FRAMES / 2] = rate / internalRate;
    const hz = steps(stop, internalRate / 2);
    const { db } = frequencyResponse(toInternalRate(impulse, rate), hz, internalRate);
    expect(Math.max(...db)).toBeLessThan(-60);
  });
});

// Of a source at 44.1 or 48 kHz there is nothing above to be taken away.
describe.each(ROWS.slice(2))('a tone at $rate Hz', ({ rate, stop }) => {
  test(`from ${stop} Hz on is 60 dB down wherever it folds to`, () => {
    const levels = steps(stop, rate / 2).map((hz) => levelAfter(hz, rate));
    expect(Math.max(...levels)).toBeLessThan(-60);
  });

  test('of 20 kHz is there as it was', () => {
    expect(levelAfter(20_000, rate)).toBeWithin(0, 0.05);
  });
});

/** Fifty frequencies, the first included. */
function steps(from: number, until: number): number[] {
  return Array.from({ length: 50 }, (_, n) => from + ((until - from) * n) / 50);
}
