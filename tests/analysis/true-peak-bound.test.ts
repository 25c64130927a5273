// What lets the kernel's true-peak.ts pass frames over: its STEP_SHARE is 0.9.
import { expect, test } from 'vitest';
import { bandLimitOf } from '../../src/analysis/band-limit.js';
import { doubleRate } from '../../src/analysis/half-band.js';
import { interpolationTaps } from '../../src/analysis/interpolate.js';

const STEP_SHARE = 0.9;
/** Where the frame before the place lies, among frames of the base rate. */
const AT = 40;
const PHASES = 128;

/** What each frame of the base rate counts for at a place between two, after doubling. */
function weightsAt(fraction: number, rate: number): Float64Array {
  const { bandEndTaps } = bandLimitOf(rate);
  const place = 2 * (AT + fraction);
  const taps = interpolationTaps(place - Math.floor(place));
  return Float64Array.from({ length: 2 * AT + 2 }, (_, frame) => {
    const impulse = new Float64Array(2 * AT + 2);
    impulse[frame] = 1;
    const doubled = doubleRate(impulse, bandEndTaps);
    return taps.reduce((sum, tap, n) => sum + tap * (doubled[Math.floor(place) - 5 + n] ?? 0), 0);
  });
}

test.each([44_100, 48_000])(
  'a place between frames is over none of the two by 0.9 of the largest step around, %i Hz',
  (rate) => {
    const shares = Array.from({ length: PHASES }, (_, phase) => {
      const weights = weightsAt(phase / PHASES, rate);
      weights[AT]! -= 1 - phase / PHASES;
      weights[AT + 1]! -= phase / PHASES;
      let sum = 0;
      return weights.reduce((share, weight) => {
        sum += weight;
        return share + Math.abs(sum);
      }, 0);
    });
    expect(Math.max(...shares)).toBeGreaterThan(0.3);
    expect(Math.max(...shares)).toBeLessThan(STEP_SHARE);
  },
);
