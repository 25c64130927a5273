// What lets the kernel's interpolate.ts pass local maxima over: its SKEW_SHARE is 0.15.
import { expect, test } from 'vitest';
import { type Frames, isLocalMaximum, peakNear } from '../../src/analysis/interpolate.js';
import { seeded } from '../support/signals.js';

const SKEW_SHARE = 0.15;
const RIPPLE = 1e-6;
/** Band end over the lowest internal rate. */
const BAND_END = 24_100 / 88_200;
const LENGTH = 4000;
const EDGE = 40;

/** Tones of random pitch up to a limit, of random height and phase. */
function tones(count: number, limit: number, random: () => number): Frames {
  const parts = Array.from({ length: count }, () => ({
    turns: limit * random(),
    start: random(),
    height: random() ** 3,
  }));
  const values = Float64Array.from({ length: LENGTH }, (_, frame) =>
    parts.reduce(
      (sum, { turns, start, height }) =>
        sum + height * Math.sin(2 * Math.PI * (turns * frame + start)),
      0,
    ),
  );
  return (frame) => values[frame] ?? 0;
}

/** What the peaks next to local maxima rise by, as a share of what they are allowed. */
function shares(signal: Frames): number[] {
  const bend = (at: number): number => 2 * signal(at) - signal(at - 1) - signal(at + 1);
  const found: number[] = [];
  for (let at = EDGE; at < LENGTH - EDGE; at++) {
    if (!isLocalMaximum(signal, at)) continue;
    const skews = [-2, -1, 0, 1].map((n) => Math.abs(bend(at + n + 1) - bend(at + n)));
    const parabola = Math.abs(signal(at + 1) - signal(at - 1)) / 8;
    const bound = RIPPLE * Math.abs(signal(at)) + parabola + SKEW_SHARE * Math.max(...skews);
    found.push((peakNear(signal, at).value - signal(at)) / bound);
  }
  return found;
}

test.each([1, 2, 3, 12, 60])(
  'no peak beside a local maximum is over its parabola by 0.15 of what curvature changes, %i tones',
  (count) => {
    const random = seeded(count);
    const limits = [0.02, 0.1, 0.2, BAND_END, BAND_END, BAND_END];
    const all = limits.flatMap((limit) => shares(tones(count, limit, random)));
    expect(all.length).toBeGreaterThan(1000);
    expect(all.reduce((most, share) => Math.max(most, share), 0)).toBeLessThan(1);
  },
);
