// From program to motion through the plain chain, from a decay. Source: physics.md's formula is
// that of IEC 60098 and Butterworth; tests/support/exact-curve.ts writes it out a second time.
import { describe, expect, test } from 'vitest';
import { bandLimitOf } from '../../src/analysis/band-limit.js';
import { designHighPass } from '../../src/analysis/biquad.js';
import { type Complex, divide, multiply, unitPhasor } from '../../src/analysis/complex.js';
import { applyElliptical } from '../../src/analysis/elliptical.js';
import { filterMotion } from '../../src/analysis/filter-motion.js';
import { designMotionFilter } from '../../src/analysis/motion-filter.js';
import { frequencyResponse, logFrequencies } from '../reference-signals/frequency-response.mjs';
import {
  exactAcceleration,
  exactDisplacement,
  exactVelocity,
  highPass,
} from '../support/exact-curve.js';
import { toBaseRate } from '../support/to-internal-rate.js';

const HZ = logFrequencies(20, 20_000, 64);
/** Long enough for the 20 Hz high-pass to come to rest. */
const SECONDS = 0.5;
const BEGIN_SECONDS = 0.01;
/** Of the decay. Behind an impulse the bass would be lost under the rounding of its treble to f32. */
const CORNER_HZ = 20;

const QUANTITIES = [
  { quantity: 'displacement', formula: exactDisplacement, db: 0.02 },
  { quantity: 'velocity', formula: exactVelocity, db: 0.01 },
  { quantity: 'acceleration', formula: exactAcceleration, db: 0.02 },
] as const;

/** What is left of the decay from one frame to the next. */
const ratioAt = (rate: number): number => Math.exp((-2 * Math.PI * CORNER_HZ) / rate);

/**
 * A geometric decay from a place on, at the base rate, as strong as the source's own; what folds
 * on the way is in it.
 */
function decayAt(rate: number): Float64Array {
  const strength = rate / bandLimitOf(rate).internalRate;
  const begin = Math.round(BEGIN_SECONDS * rate);
  const decay = Float64Array.from({ length: SECONDS * rate }, (_, frame) =>
    frame < begin ? 0 : strength * ratioAt(rate) ** (frame - begin),
  );
  return toBaseRate(decay, rate);
}

/** Its spectrum but for where it begins: the sum of the geometric series. */
function decaySpectrum(hz: number, rate: number): Complex {
  const { re, im } = unitPhasor((-2 * Math.PI * hz) / rate);
  return divide({ re: 1, im: 0 }, { re: 1 - ratioAt(rate) * re, im: -ratioAt(rate) * im });
}

/** Decibels and degrees by which what a decay of a source's rate has set off is off a formula. */
function offFormula(
  response: Float64Array,
  rate: number,
  formula: (hz: number) => Complex,
): { db: number[]; degrees: number[] } {
  const measured = frequencyResponse(response, HZ, bandLimitOf(rate).internalRate);
  const errors = HZ.map((hz, point) => {
    const phase = (measured.degrees[point]! * Math.PI) / 180;
    const level = 10 ** (measured.db[point]! / 20);
    const value = multiply({ re: level, im: 0 }, unitPhasor(phase));
    const late = unitPhasor(-2 * Math.PI * hz * BEGIN_SECONDS);
    return divide(value, multiply(multiply(formula(hz), late), decaySpectrum(hz, rate)));
  });
  return {
    db: errors.map(({ re, im }) => 20 * Math.log10(Math.hypot(re, im))),
    degrees: errors.map(({ re, im }) => (Math.atan2(im, re) * 180) / Math.PI),
  };
}

const NONE = HZ.map(() => 0);

describe.each([44_100, 48_000, 88_200, 96_000, 176_400, 192_000])('from %i Hz', (rate) => {
  const { internalRate } = bandLimitOf(rate);
  const program = decayAt(rate);
  const motion = filterMotion(program, designMotionFilter(internalRate, 20, 1));

  test.each(QUANTITIES)(
    '$quantity is H·B within $db dB, 20 Hz to 20 kHz',
    ({ quantity, formula, db }) => {
      const off = offFormula(motion[quantity], rate, formula);
      expect(off.db).toBeWithin(NONE, db);
    },
  );

  test.each(QUANTITIES)(
    '$quantity has its phase within 1°, no delay left',
    ({ quantity, formula }) => {
      const off = offFormula(motion[quantity], rate, formula);
      expect(off.degrees).toBeWithin(NONE, 1);
    },
  );
});

describe.each([1, 2] as const)('an elliptical filter of order %i at 150 Hz', (order) => {
  const rate = 44_100;
  const { baseRate, internalRate } = bandLimitOf(rate);
  const left = decayAt(rate);
  const silent = new Float64Array(left.length);
  const section = designHighPass(order, 150, baseRate);
  const filter = designMotionFilter(internalRate, 20, 1);
  const cut = applyElliptical({ left, right: silent }, section);
  const walls = [filterMotion(cut.left, filter), filterMotion(cut.right, filter)] as const;

  test.each(QUANTITIES)('takes H·B·E of the difference, $quantity', ({ quantity, formula, db }) => {
    const difference = walls[0][quantity].map((value, n) => value - walls[1][quantity][n]!);
    const exact = (hz: number): Complex => multiply(formula(hz), highPass(hz, 150, order));
    const off = offFormula(difference, rate, exact);
    expect(off.db).toBeWithin(NONE, db);
    expect(off.degrees).toBeWithin(NONE, 1);
  });

  test.each(QUANTITIES)('and leaves the sum alone, $quantity', ({ quantity, formula, db }) => {
    const sum = walls[0][quantity].map((value, n) => value + walls[1][quantity][n]!);
    const off = offFormula(sum, rate, formula);
    expect(off.db).toBeWithin(NONE, db);
    expect(off.degrees).toBeWithin(NONE, 1);
  });
});

// Source: first-order high-pass by hand, 1/√(1 + (fc/f)²): constants.md has the same three figures.
test('bass mono of first order takes 3.01, 6.99 and 12.30 dB at fc, fc/2 and fc/4', () => {
  const hz = [200, 100, 50];
  const left = new Float64Array(SECONDS * 88_200);
  left[0] = 1;
  const right = new Float64Array(left.length);
  const cut = applyElliptical({ left, right }, designHighPass(1, 200, 88_200));
  const difference = cut.left.map((value, n) => value - cut.right[n]!);
  const { db } = frequencyResponse(difference, hz, 88_200);
  expect(db).toBeWithin([-3.01, -6.99, -12.3], 0.01);
});
