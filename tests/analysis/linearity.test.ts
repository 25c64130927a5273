import { expect, test } from 'vitest';
import type { Histogram, MotionSummary } from '../../src/analysis/motion.js';
import { noise, scaled } from '../support/signals.js';
import { settingsWith, summaryOf } from './summary-of.js';

const FRAMES = 60_000;
const PROGRAM = { left: noise(FRAMES, 11, 0.3), right: noise(FRAMES, 12, 0.3) };
const LOUDER = { left: scaled(PROGRAM.left, 2), right: scaled(PROGRAM.right, 2) };

const BINS = ['approach', 'approachLoose', 'lift', 'sink', 'lateral', 'outward', 'inward'] as const;

/** What is smaller is, or is made of, subnormal numbers of f32, which have fewer bits. */
const SUBNORMAL = 1e-30;

/** Doubling is exact in binary arithmetic, so nothing need be near. */
function expectTwice(louder: MotionSummary, softer: MotionSummary): void {
  for (const field of BINS) {
    expect(louder[field], field).toBeWithin(scaled(softer[field], 2), SUBNORMAL);
  }
  const bass = (of: MotionSummary): Float64Array => of.lowBand.verticalAmplitude;
  expect(bass(louder)).toBeWithin(scaled(bass(softer), 2), SUBNORMAL);
  for (const wall of ['left', 'right'] as const) {
    const [loud, soft] = [louder[wall], softer[wall]];
    expect(loud.velocityPeak).toBeWithin(scaled(soft.velocityPeak, 2), SUBNORMAL);
    expect(loud.accelerationPeak).toBeWithin(scaled(soft.accelerationPeak, 2), SUBNORMAL);
    expect(loud.velocityMeanSquare).toBeWithin(scaled(soft.velocityMeanSquare, 4), SUBNORMAL);
    expect(loud.accelerationMeanSquare).toBeWithin(
      scaled(soft.accelerationMeanSquare, 4),
      SUBNORMAL,
    );
    expectFourClassesUp(loud.accelerationHistogram, soft.accelerationHistogram);
    expectFourClassesUp(loud.edgeVelocityHistogram, soft.edgeVelocityHistogram);
  }
}

/** Four classes are a factor of two. Only the first quarters, which are not silent. */
function expectFourClassesUp(loud: Histogram, soft: Histogram): void {
  const quarters = 3;
  expect(loud.topClass.subarray(0, quarters)).toEqual(
    soft.topClass.subarray(0, quarters).map((top) => top + 4),
  );
  expect(loud.counts.subarray(0, 24 * quarters)).toEqual(soft.counts.subarray(0, 24 * quarters));
}

test('doubling the program doubles every field of motion', async () => {
  const settings = settingsWith();
  const softer = await summaryOf(PROGRAM, 44_100, settings);
  const louder = await summaryOf(LOUDER, 44_100, settings);
  expect(Math.max(...softer.lift)).toBeGreaterThan(1e-6);
  expectTwice(louder, softer);
});

test('and so does doubling the velocity of the reference', async () => {
  const softer = await summaryOf(PROGRAM, 44_100, settingsWith({ referenceVelocity: 0.05 }));
  const louder = await summaryOf(PROGRAM, 44_100, settingsWith({ referenceVelocity: 0.1 }));
  expectTwice(louder, softer);
});

test('a polarity of −1 exchanges lift and sink', async () => {
  const up = await summaryOf(PROGRAM, 44_100, settingsWith({ polarity: 1 }));
  const down = await summaryOf(PROGRAM, 44_100, settingsWith({ polarity: -1 }));
  expect(down.lift).toBeWithin(up.sink, 0, 1e-12);
  expect(down.sink).toBeWithin(up.lift, 0, 1e-12);
  expect(down.lateral).toBeWithin(up.lateral, 0, 1e-12);
});

test('exchanged channels exchange the walls', async () => {
  const straight = await summaryOf(PROGRAM, 44_100, settingsWith());
  const crossed = await summaryOf(PROGRAM, 44_100, settingsWith({ swapChannels: true }));
  expect(crossed.left.velocityPeak).toEqual(straight.right.velocityPeak);
  expect(crossed.right.accelerationMeanSquare).toEqual(straight.left.accelerationMeanSquare);
  expect(crossed.lift).toBeWithin(straight.sink, 0, 1e-12);
});
