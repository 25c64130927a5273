// One program at several source rates must forecast the same groove. Tolerances: physics.md,
// section 2 (0.05 µm, 0.2 dB); the program is a formula, sampled, with its content below 19 kHz.
import { beforeAll, describe, expect, test } from 'vitest';
import {
  HISTOGRAM_CLASSES,
  type Histogram,
  type MotionSummary,
} from '../../src/analysis/motion.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { faded, seeded, tones } from '../support/signals.js';
import { settingsWith, summaryOf } from './summary-of.js';

const SECONDS = 3;
const FIELDS = [
  'approach',
  'approachLoose',
  'lift',
  'sink',
  'lateral',
  'outward',
  'inward',
] as const;

/**
 * Tones at no simple fractions of each other or of an internal rate, at which few phases would be
 * sampled again and again; softer towards the top, faded.
 */
function formula(rate: number): Stereo {
  const next = seeded(3);
  const channel = (): Float64Array => {
    const parts = [31, 67, 149, 407, 1213, 3301, 7919, 11_311, 18_701].map((hz) => ({
      hz: hz * (1 + 0.01 * next()),
      amplitude: 0.12 / Math.sqrt(1 + hz / 1000),
      phase: 6.28 * next(),
    }));
    return faded(tones(parts, SECONDS * rate, rate), 0.5 * rate);
  };
  return { left: channel(), right: channel() };
}

/** Share of a quarter's samples at or above a class. */
function shareAbove({ topClass, counts }: Histogram, quarter: number, from: number): number {
  const row = counts.subarray(quarter * HISTOGRAM_CLASSES, (quarter + 1) * HISTOGRAM_CLASSES);
  const all = row.reduce((sum, count) => sum + count, 0);
  const top = topClass[quarter] ?? 0;
  return row.reduce((sum, count, under) => sum + (top - under >= from ? count : 0), 0) / all;
}

describe.each([48_000, 88_200, 176_400, 192_000])('a program at %i Hz and at 44.1 kHz', (rate) => {
  const settings = settingsWith();
  let here: MotionSummary;
  let there: MotionSummary;
  beforeAll(async () => {
    here = await summaryOf(formula(44_100), 44_100, settings);
    there = await summaryOf(formula(rate), rate, settings);
  });

  for (const field of FIELDS) {
    test(`${field} is the same in every bin to 0.05 µm`, () => {
      expect(Math.max(...here[field])).toBeGreaterThan(10e-6);
      expect(there[field]).toBeWithin(here[field], 0.05e-6);
    });
  }

  test.each(['left', 'right'] as const)('the %s wall peaks alike, to 0.1 and 0.2 dB', (wall) => {
    const db = (value: number): number => 1 - 10 ** (-value / 20);
    const [mine, other] = [here[wall], there[wall]];
    expect(Math.max(...mine.accelerationPeak)).toBeGreaterThan(100);
    expect(other.velocityPeak).toBeWithin(mine.velocityPeak, 1e-6, db(0.1));
    expect(other.accelerationPeak).toBeWithin(mine.accelerationPeak, 0.1, db(0.2));
  });

  test('as much of each quarter lies over any class, to 1 % of the samples', () => {
    for (const name of ['accelerationHistogram', 'edgeVelocityHistogram'] as const) {
      const [mine, other] = [here.left[name], there.left[name]];
      for (let quarter = 1; quarter < 6; quarter++) {
        const top = mine.topClass[quarter] ?? 0;
        for (const under of [2, 4, 8, 12]) {
          const share = shareAbove(mine, quarter, top - under);
          if (under === 8) expect(share).toBeGreaterThan(0.05);
          expect(shareAbove(other, quarter, top - under)).toBeWithin(share, 0.01);
        }
      }
    }
  });
});

describe('−50 dBFS of 40 kHz on a 96 kHz program', () => {
  const settings = settingsWith();
  const rate = 96_000;
  const amplitude = 10 ** (-50 / 20);
  let without: MotionSummary;
  let with40k: MotionSummary;
  beforeAll(async () => {
    const program = formula(rate);
    const tone = tones([{ hz: 40_000, amplitude }], SECONDS * rate, rate);
    const added = { ...program, left: program.left.map((value, n) => value + (tone[n] ?? 0)) };
    without = await summaryOf(program, rate, settings);
    with40k = await summaryOf(added, rate, settings);
  });

  test('moves no bin by more than 0.05 µm', () => {
    for (const field of FIELDS) expect(with40k[field], field).toBeWithin(without[field], 0.05e-6);
  });

  test('moves no peak of the acceleration by more than 0.2 dB, where there is music', () => {
    const quarters = 6;
    const of = ({ left }: MotionSummary) => left.accelerationPeak.subarray(0, quarters);
    expect(of(with40k)).toBeWithin(of(without), 0, 1 - 10 ** (-0.2 / 20));
  });

  test('is told as what it is, to 0.5 dB', () => {
    const told = 10 * Math.log10(with40k.program.ultrasonicMeanSquare);
    // A sine's mean square is half its squared peak.
    expect(told).toBeWithin(10 * Math.log10(amplitude ** 2 / 2), 0.5);
    expect(without.program.ultrasonicMeanSquare).toBeLessThan(1e-3 * (amplitude ** 2 / 2));
  });
});
