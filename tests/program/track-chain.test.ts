// A track on its way to a program of another rate, then through the chain, from a decay. Source:
// the formula of IEC 60098 and Butterworth's, written out a second time in exact-curve.ts; the band
// is that which every source is judged in.
import { describe, expect, test } from 'vitest';
import { type Complex, divide, multiply, unitPhasor } from '../../src/analysis/complex.js';
import { filterMotion } from '../../src/analysis/filter-motion.js';
import { designMotionFilter } from '../../src/analysis/motion-filter.js';
import { joinStereo, type Stereo } from '../../src/analysis/stereo.js';
import { trackChain } from '../../src/program/track-chain.js';
import { frequencyResponse, logFrequencies } from '../reference-signals/frequency-response.mjs';
import { exactAcceleration, exactDisplacement, exactVelocity } from '../support/exact-curve.js';
import { inBoth, noise, tones } from '../support/signals.js';
import { toBaseRate, toInternalRate } from '../support/to-internal-rate.js';

const HZ = logFrequencies(20, 20_000, 64);
const NONE = HZ.map(() => 0);
const SECONDS = 0.5;
const BEGIN_SECONDS = 0.01;
const CORNER_HZ = 20;

const QUANTITIES = [
  { quantity: 'displacement', formula: exactDisplacement, db: 0.02 },
  { quantity: 'velocity', formula: exactVelocity, db: 0.01 },
  { quantity: 'acceleration', formula: exactAcceleration, db: 0.02 },
] as const;

const ratioAt = (rate: number): number => Math.exp((-2 * Math.PI * CORNER_HZ) / rate);

/** A signal and enough silence behind it, brought to another rate in blocks of some length. */
function brought(signal: Float64Array, from: number, to: number, block = 10_000): Stereo {
  const chain = trackChain(from, to, () => {});
  const padded = new Float64Array(signal.length + 2000);
  padded.set(signal);
  let all: Stereo = inBoth(new Float64Array(0));
  for (let at = 0; at < padded.length; at += block) {
    all = joinStereo(all, chain.push(inBoth(padded.slice(at, at + block))));
  }
  return all;
}

/** A geometric decay from a place on, at the base rate, by way of the program's. */
function decayBy(from: number, to: number): Float64Array {
  const begin = Math.round(BEGIN_SECONDS * from);
  const strength = from / (2 * to);
  const decay = Float64Array.from({ length: SECONDS * from }, (_, frame) =>
    frame < begin ? 0 : strength * ratioAt(from) ** (frame - begin),
  );
  return toBaseRate(brought(decay, from, to).left, to);
}

function decaySpectrum(hz: number, rate: number): Complex {
  const { re, im } = unitPhasor((-2 * Math.PI * hz) / rate);
  return divide({ re: 1, im: 0 }, { re: 1 - ratioAt(rate) * re, im: -ratioAt(rate) * im });
}

function offFormula(
  response: Float64Array,
  rate: number,
  internalRate: number,
  formula: (hz: number) => Complex,
): { db: number[]; degrees: number[] } {
  const measured = frequencyResponse(response, HZ, internalRate);
  const errors = HZ.map((hz, point) => {
    const phase = ((measured.degrees[point] ?? 0) * Math.PI) / 180;
    const level = 10 ** ((measured.db[point] ?? 0) / 20);
    const late = unitPhasor((-2 * Math.PI * hz * Math.round(BEGIN_SECONDS * rate)) / rate);
    const value = multiply({ re: level, im: 0 }, unitPhasor(phase));
    return divide(value, multiply(multiply(formula(hz), late), decaySpectrum(hz, rate)));
  });
  return {
    db: errors.map(({ re, im }) => 20 * Math.log10(Math.hypot(re, im))),
    degrees: errors.map(({ re, im }) => (Math.atan2(im, re) * 180) / Math.PI),
  };
}

describe.each([
  [44_100, 48_000],
  [88_200, 48_000],
  [176_400, 48_000],
  [96_000, 48_000],
  [192_000, 48_000],
  [88_200, 44_100],
  [176_400, 44_100],
])('from %i Hz in a program of %i Hz', (from, to) => {
  const motion = filterMotion(decayBy(from, to), designMotionFilter(2 * to, 20, 1));

  test.each(QUANTITIES)(
    '$quantity is H·B within $db dB and 1°, 20 Hz to 20 kHz, no delay left',
    ({ quantity, formula, db }) => {
      const off = offFormula(motion[quantity], from, 2 * to, formula);
      expect(off.db).toBeWithin(NONE, db);
      expect(off.degrees).toBeWithin(NONE, 1);
    },
  );
});

test.each([44_100, 88_200])(
  'a 20 kHz tone of %i Hz leaves nothing over −60 dB from 24.1 kHz on, in a program of 48 kHz',
  (from) => {
    const tone = tones([{ hz: 20_000, amplitude: 1 }], from / 2, from);
    const heard = toInternalRate(brought(tone, from, 48_000).left, 48_000);
    // Behind its beginning, under a window whose side lobes are 92 dB down and its lobe 24 Hz wide.
    const steady = heard.slice(8000, 8000 + 32_000).map((value, n) => value * window(n, 32_000));
    const hz = Array.from({ length: 400 }, (_, n) => 24_100 + n * 59);
    const { db } = frequencyResponse(steady, [20_000, ...hz], 96_000);
    const [level = 0, ...above] = db;
    expect(Math.max(...above) - level).toBeLessThan(-60);
  },
);

test.each([44_100, 88_200, 176_400, 32_000])('blocks do not show, from %i Hz', (from) => {
  const signal = noise(6000, 5, 0.5);
  const whole = brought(signal, from, 48_000, 10_000);
  for (const block of [1, 333, 4096]) {
    const cut = brought(signal, from, 48_000, block);
    const length = Math.min(cut.left.length, whole.left.length);
    expect(length).toBeGreaterThan(2000);
    expect(cut.left.slice(0, length)).toEqual(whole.left.slice(0, length));
  }
});

/** Blackman and Harris, four terms. Source: F. J. Harris, Proc. IEEE 66, 1978 (from memory). */
function window(n: number, length: number): number {
  const turn = (2 * Math.PI * n) / length;
  return (
    0.35875 - 0.48829 * Math.cos(turn) + 0.14128 * Math.cos(2 * turn) - 0.01168 * Math.cos(3 * turn)
  );
}
