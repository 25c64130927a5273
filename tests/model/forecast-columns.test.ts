import { expect, test } from 'vitest';
import { bestSplit } from '../../src/model/best-split.js';
import { FINDING_IDS } from '../../src/model/forecast-types.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingsOf } from '../support/findings-of.js';

test('every column has an entry for each quarter that the program touches', () => {
  // Two turns and a bit: nine quarters; the summary has some more, of silence.
  const motion = emptyMotion(2.1 * 1.8);
  motion.left.accelerationPeak.fill(1000, 2, 3);
  motion.lowBand.verticalAmplitude.fill(3e-6);
  motion.lowBand.verticalShare.fill(0.4);
  motion.lowBand.correlation.fill(-0.3);
  const { quarters } = findingsOf(motion);
  for (const [name, column] of Object.entries(quarters))
    expect([name, column.length]).toEqual([name, 9]);
  expect(quarters.lowVerticalShare).toEqual(new Float64Array(9).fill(0.4));
  expect(quarters.lowCorrelation).toEqual(new Float64Array(9).fill(-0.3));
  const speed = (2 * Math.PI * (0.14605 - 75e-6)) / 1.8;
  expect(quarters.bendMin[2]).toBeWithin(speed ** 2 / 1000, 1e-9);
  expect(quarters.bendMin.filter(Number.isNaN)).toHaveLength(8);
});

test('of two splits that are as good the first sides hold more', () => {
  const track = (radiusUsed: number) => ({ name: '', radiusUsed, durationSeconds: 60 });
  expect(bestSplit([[track(3), track(0), track(3)], []])).toEqual({ counts: [2, 1], most: 3 });
  // Fewer tracks than sides leave one empty, which no split does.
  expect(bestSplit([[track(3)], []])).toBeNull();
});

test('the ids of findings are each their own, in letters that a command line takes', () => {
  expect(new Set(FINDING_IDS).size).toBe(FINDING_IDS.length);
  for (const id of FINDING_IDS) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
});
