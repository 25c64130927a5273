// Closed forms of neighbouring turns. Source: geometry of the 45/45 groove (IEC 60098:2020, 6.2):
// u_R(t) and u_L(t − T) close in on each other; amplitudes by the formula of IEC 60098.
import { describe, expect, test } from 'vitest';
import { BINS_PER_QUARTER, type MotionSummary } from '../../src/analysis/motion.js';
import { fullScaleVelocityOf, settingsWith, summaryOf } from '../analysis/summary-of.js';
import { wallAmplitude } from '../support/exact-curve.js';
import { inBoth, rising, scaled, tones } from '../support/signals.js';

const RATE = 44_100;
const TURN = 1.8;
const AMPLITUDE = 0.1;
/** Turns of tone; the third has a steady one on its outside, and no end in sight. */
const FRAMES = 3.2 * TURN * RATE;

/** Frequencies: turns in phase, in antiphase, in between, and where the curve is steep. */
const TONES_HZ = [100, 100 + 5 / 18, 52.3, 999.9, 7000 + 1 / 9];

const exact = settingsWith({ speedTolerance: 0 });
const loose = settingsWith({ speedTolerance: 0.001 });

function sine(hz: number): Float64Array {
  return tones([{ hz, amplitude: AMPLITUDE }], FRAMES, RATE);
}

/** Peak of the edge of one wall: √2 of the wall's own. */
function edgeAmplitude(hz: number): number {
  return Math.SQRT2 * wallAmplitude(hz, AMPLITUDE, fullScaleVelocityOf(exact));
}

type Field = 'approach' | 'approachLoose' | 'lateral' | 'lift' | 'sink';

/** Extremes over the steady middle: half a turn on from half a turn after the third's begin. */
function steady(summary: MotionSummary, field: Field): number {
  const bins = 4 * BINS_PER_QUARTER;
  return Math.max(...summary[field].subarray(2.5 * bins, 3 * bins));
}

/** 0.05 µm or 0.1 %: physics.md, section 2. */
function expectMetres(actual: number, expected: number): void {
  expect(actual).toBeWithin(expected, 0.05e-6, 0.001);
}

describe.each(TONES_HZ)('a sine of %f Hz', (hz) => {
  const edge = edgeAmplitude(hz);

  test('alike in both channels closes in by 2A·|sin πfT|', async () => {
    const summary = await summaryOf(inBoth(sine(hz)), RATE, exact);
    expectMetres(steady(summary, 'lateral'), edge);
    expectMetres(steady(summary, 'approach'), 2 * edge * Math.abs(Math.sin(Math.PI * hz * TURN)));
    expectMetres(steady(summary, 'lift'), 0);
  });

  test.each(['left', 'right'] as const)('in the %s channel alone, by √2·a', async (side) => {
    const silent = new Float64Array(FRAMES);
    const program = { left: silent, right: silent, [side]: sine(hz) };
    const summary = await summaryOf(program, RATE, exact);
    expectMetres(steady(summary, 'approach'), edge);
    expectMetres(steady(summary, 'lateral'), edge / 2);
  });

  test('opposite in both, by 2Z·|cos πfT|', async () => {
    const left = sine(hz);
    const summary = await summaryOf({ left, right: scaled(left, -1) }, RATE, exact);
    expectMetres(steady(summary, 'lift'), edge);
    expectMetres(steady(summary, 'sink'), edge);
    expectMetres(steady(summary, 'approach'), 2 * edge * Math.abs(Math.cos(Math.PI * hz * TURN)));
    expectMetres(steady(summary, 'lateral'), 0);
  });
});

test('100 Hz runs parallel at 33⅓ rpm and at 33.29 no more', async () => {
  const summary = await summaryOf(inBoth(sine(100)), RATE, exact);
  expect(steady(summary, 'approach')).toBeLessThan(0.001 * edgeAmplitude(100));
  const other = settingsWith({ speedTolerance: 0, rpm: 33.29 });
  const off = await summaryOf(inBoth(sine(100)), RATE, other);
  const angle = (Math.PI * 100 * 60) / 33.29;
  expectMetres(steady(off, 'approach'), 2 * edgeAmplitude(100) * Math.abs(Math.sin(angle)));
});

describe('with a speed known to 0.1 %', () => {
  /** max over |δ| ≤ εT of |sin πf(T + δ)|, by trying. */
  function worstSine(hz: number): number {
    const slack = 0.001 * TURN;
    const tries = Array.from({ length: 2001 }, (_, n) => ((n - 1000) / 1000) * slack);
    return Math.max(...tries.map((off) => Math.abs(Math.sin(Math.PI * hz * (TURN + off)))));
  }

  test('100 Hz may close in by 1.07·A instead of nothing', async () => {
    const summary = await summaryOf(inBoth(sine(100)), RATE, loose);
    expect(worstSine(100)).toBeWithin(1.07 / 2, 0.005 / 2);
    expectMetres(steady(summary, 'approachLoose'), 2 * edgeAmplitude(100) * worstSine(100));
    expect(steady(summary, 'approach')).toBeLessThan(0.001 * edgeAmplitude(100));
  });

  test.each(TONES_HZ)('%f Hz by 2A·max |sin πf(T + δ)|', async (hz) => {
    const summary = await summaryOf(inBoth(sine(hz)), RATE, loose);
    expectMetres(steady(summary, 'approachLoose'), 2 * edgeAmplitude(hz) * worstSine(hz));
  });
});

describe('two bursts, on the inner wall and then on the outer', () => {
  const hz = 5000;
  /** Eight milliseconds of a tone under a bell, so narrow a band that the curve is one number. */
  const burst = (from: number, sign: number) =>
    Float64Array.from({ length: FRAMES }, (_, n) => {
      const at = n / RATE - from;
      const bell = rising(at, 0, 0.004) * rising(0.008 - at, 0, 0.004);
      return sign * AMPLITUDE * bell * Math.cos(2 * Math.PI * hz * (at - 0.004));
    });
  const edge = edgeAmplitude(hz);
  /** The bell's own band: ±250 Hz, over which |H·B/s| bends by less than a percent. */
  const share = 0.01;

  test('one turn apart and against each other, close in by both amplitudes', async () => {
    const program = { left: burst(0.5, -1), right: burst(0.5 + TURN, 1) };
    const { approach, outward, inward } = await summaryOf(program, RATE, exact);
    expect(Math.max(...outward)).toBeWithin(edge, 0, share);
    expect(Math.max(...inward)).toBeWithin(edge, 0, share);
    expect(Math.max(...approach)).toBeWithin(2 * edge, 0, share);
    // The bin that holds 2.3 s + 4 ms, by hand.
    const bin = Math.floor((0.5 + TURN + 0.004) / (TURN / 64));
    expect(approach.indexOf(Math.max(...approach))).toBe(bin);
  });

  test('one turn and 10 ms apart, pass each other at a known speed', async () => {
    const program = { left: burst(0.5, -1), right: burst(0.51 + TURN, 1) };
    const { approach, approachLoose } = await summaryOf(program, RATE, exact);
    expect(Math.max(...approach)).toBeWithin(edge, 0, share);
    expect(approachLoose).toEqual(approach);
  });

  test('but may meet where the speed is known to 1 % only, 18 ms', async () => {
    const program = { left: burst(0.5, -1), right: burst(0.51 + TURN, 1) };
    const off = settingsWith({ speedTolerance: 0.01 });
    const { approach, approachLoose } = await summaryOf(program, RATE, off);
    expect(Math.max(...approachLoose)).toBeWithin(2 * edge, 0, share);
    expect(Math.max(...approach)).toBeWithin(edge, 0, share);
  });

  test('and not at 0.5 %, 9 ms, but for the ends of the bells', async () => {
    const program = { left: burst(0.5, -1), right: burst(0.52 + TURN, 1) };
    const off = settingsWith({ speedTolerance: 0.005 });
    const { approachLoose } = await summaryOf(program, RATE, off);
    expect(Math.max(...approachLoose)).toBeWithin(edge, 0, share);
  });
});
