import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BINS_PER_QUARTER } from '../../../../src/analysis/motion.js';
import { codeMotion } from '../../../../src/report/html/data/code-motion.js';
import { keepMotion } from '../../../../src/report/html/data/keep-motion.js';
import { emptyKept, type KeptMotion } from '../../../../src/report/html/data/kept-motion.js';
import { keptSummary } from '../../../../src/report/html/data/kept-summary.js';
import { leastAsked } from '../../../../src/report/html/data/least-asked.js';
import { rangeDecoder, rangeEncoder } from '../../../../src/report/html/data/range-coder.js';
import { emptyMotion } from '../../../support/empty-motion.js';
import { settingsWith } from '../../../support/model-settings.js';
import { seeded } from '../../../support/signals.js';

const TURN = 1.8;
/** What no sound makes, and what it makes, from the least to the largest number. */
const VALUES = [
  0,
  -0,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  Number.MAX_VALUE,
  -Number.MAX_VALUE,
  Number.MIN_VALUE,
  2 ** -1022,
  1e-6,
  -1e-6,
  40e-6,
  0.12,
  1e4,
];

function read(kept: KeptMotion, quarterCount: number): KeptMotion {
  const coder = rangeEncoder();
  codeMotion(coder, kept);
  const back = emptyKept(quarterCount, kept.leastClasses);
  codeMotion(rangeDecoder(coder.finish()), back);
  return back;
}

/** Rows filled with values, in any order. */
function motionOf(turns: number, seed: number, values: readonly number[]) {
  const motion = emptyMotion(turns * TURN, TURN);
  const next = seeded(seed);
  const any = () => values[Math.floor(next() * values.length)] ?? 0;
  const fill = (row: Float64Array) => {
    for (const at of row.keys()) row[at] = any();
  };
  const { approach, approachLoose, lift, sink, lateral, outward, inward, lowBand } = motion;
  for (const row of [approach, approachLoose, lift, sink, lateral, outward, inward]) fill(row);
  fill(lowBand.strongestFrequency);
  fill(lowBand.verticalAmplitude);
  for (const wall of [motion.left, motion.right]) {
    fill(wall.velocityPeak);
    fill(wall.accelerationPeak);
    fill(wall.velocityMeanSquare);
    fill(wall.accelerationMeanSquare);
    for (const { topClass, counts } of [wall.edgeVelocityHistogram, wall.accelerationHistogram]) {
      for (const at of topClass.keys()) topClass[at] = Math.round((next() - 0.5) * 65_534);
      for (const at of counts.keys()) counts[at] = next() < 0.5 ? 0 : Math.floor(next() * 2 ** 20);
    }
  }
  return motion;
}

const SETTINGS = settingsWith();
const ASKED = leastAsked(SETTINGS, SETTINGS.innerDiameter, 6);
const LENGTHS = fc.constantFrom(0, 1 / 64, 0.25, 1, 3.7);
const CHOICES = fc.oneof(
  fc.constant(VALUES),
  fc.constantFrom(...VALUES).map((value) => [value]),
  fc.array(fc.double(), { minLength: 1, maxLength: 8 }),
);

describe('a motion that is coded', () => {
  it('comes back as it was kept, whatever stands in its columns', () => {
    const property = (turns: number, seed: number, values: readonly number[]) => {
      const motion = motionOf(turns, seed, values);
      const kept = keepMotion(motion, ASKED);
      expect(read(kept, motion.quarterCount)).toEqual(kept);
    };
    const seeds = fc.integer({ min: 1, max: 2 ** 31 - 1 });
    fc.assert(fc.property(LENGTHS, seeds, CHOICES, property), { numRuns: 150 });
  });

  it('has finite lengths, whatever stands in its columns', () => {
    const motion = motionOf(3, 1, VALUES);
    const kept = read(keepMotion(motion, ASKED), motion.quarterCount);
    const { motion: back } = keptSummary(kept, motion);
    for (const name of ['approach', 'approachLoose', 'lift', 'sink', 'lateral'] as const) {
      expect(back[name].every(Number.isFinite)).toBe(true);
      expect(back[name].length).toBe(motion.quarterCount * BINS_PER_QUARTER);
    }
  });

  it('may have no quarters', () => {
    const none = emptyKept(0, { edgeVelocity: 0, acceleration: 0 });
    expect(read(none, 0)).toEqual(none);
  });
});
