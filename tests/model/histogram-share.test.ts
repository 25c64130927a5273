import { describe, expect, test } from 'vitest';
import { HISTOGRAM_CLASSES } from '../../src/analysis/motion.js';
import { headLoad } from '../../src/model/head-load.js';
import { rankedHistogram, samplesIn, samplesOver } from '../../src/model/histogram-share.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { emptyMotion } from '../support/empty-motion.js';
import { settingsWith } from '../support/model-settings.js';

describe('samples over a magnitude', () => {
  // Classes are quarters of an octave: class 0 from 1 up to 2^(1/4), and so on.
  const magnitude = (position: number) => 2 ** (position / 4);
  /** Of each class from 8 down 10, 20, 30 …; the peak lies in the middle of class 8. */
  const counts = Uint32Array.from({ length: HISTOGRAM_CLASSES }, (_, entry) => 10 * (entry + 1));
  const all = counts.reduce((sum, count) => sum + count, 0);
  const histogram = rankedHistogram(
    { topClass: Int16Array.of(8), counts },
    Float64Array.of(magnitude(8.5)),
  );
  const over = (position: number) => samplesOver(histogram, 0, magnitude(position));

  test.each([
    // The highest class reaches up to the peak only.
    [8.5, 0],
    [8.6, 0],
    [8.25, 5],
    [8, 10],
    // Below it a class is whole: half of 20, and the 10 above.
    [7.5, 20],
    [7, 30],
    [6.75, 37.5],
  ])('at 4·log₂ of %d: %d', (position, expected) => {
    expect(over(position)).toBeWithin(expected, 1e-6);
  });

  test('are all of them in the lowest class and under it', () => {
    const lowest = 8 - HISTOGRAM_CLASSES + 1;
    expect(samplesIn(histogram, 0)).toBe(all);
    expect(over(lowest + 0.9)).toBe(all);
    expect(over(lowest + 0.1)).toBe(all);
    expect(over(lowest - 20)).toBe(all);
    expect(over(lowest + 1.5)).toBeLessThan(all);
  });
});

test('the edge of a wall moves √2 times as fast as the wall', () => {
  const motion = emptyMotion(3.6);
  motion.left.velocityPeak[2] = 0.3;
  const { left } = plannedSide(motion, settingsWith());
  expect(left.edgeVelocity.peaks[2]).toBeWithin(0.3 * Math.SQRT2, 1e-12);
});

describe('head load', () => {
  test('is judged by the worse of a second and ten', () => {
    const motion = emptyMotion(40);
    motion.right.accelerationMeanSquare.fill(2e6, 30, 32);
    const { right } = headLoad(motion, settingsWith({ headLimit: 1e6 }), 0);
    expect(right.limitRatio).toBeWithin(2, 1e-9);
  });

  test('at half speed counts half as many quarters to a second: one', () => {
    const motion = emptyMotion(40);
    motion.right.accelerationMeanSquare[30] = 16e6;
    const { right } = headLoad(motion, settingsWith({ speedFactor: 0.5 }), 0);
    expect(right.oneSecond).toBeWithin(1e6, 1e-3);
    // 10 s are 11 quarters of 0.9 s.
    expect(right.tenSeconds).toBeWithin(1e6 / 11, 1e-3);
  });
});
