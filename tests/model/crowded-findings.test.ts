import { describe, expect, test } from 'vitest';
import { mergeNear } from '../../src/model/findings/merge-near.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingsOf, said } from '../support/findings-of.js';
import { findingWith } from '../support/forecast-fixture.js';
import { fillHistogram } from '../support/motion-of.js';

const T = 1.8;
const QUARTER = T / 4;
const REFERENCE = 0.07 ** 2 / 4;
/** Land of the unmodulated groove at 100 µm, as findingsOf cuts it. */
const OPEN = 100e-6 - 50.8e-6;

describe('findings of one kind', () => {
  const at = (atSeconds: number, untilSeconds: number, changes = {}) =>
    findingWith({ atSeconds, untilSeconds, ...changes });
  const spans = (findings: ReturnType<typeof mergeNear>) =>
    findings.map(({ severity, atSeconds, untilSeconds }) => [severity, atSeconds, untilSeconds]);

  test.each(['land-low', 'lift', 'facet', 'tight-bend', 'echo-risk'] as const)(
    '%s are one up to a turn apart, whatever their order, and two beyond it',
    (id) => {
      const near = [at(11.8, 12, { id }), at(9, 10, { id })];
      expect(spans(mergeNear(near, T))).toEqual([['caution', 9, 12]]);
      expect(mergeNear([at(11.81, 12, { id }), at(9, 10, { id })], T)).toHaveLength(2);
    },
  );

  test('overcuts stay apart: each of them is a place to mend', () => {
    const overcut = { id: 'overcut', severity: 'fault' } as const;
    expect(mergeNear([at(9, 10, overcut), at(10.1, 11, overcut)], T)).toHaveLength(2);
  });

  test('have value, wall and frequency of the worst, on whichever side of the limit it lies', () => {
    const land = { limit: 12.7e-6 };
    const [least] = mergeNear(
      [at(1, 2, { ...land, value: 9e-6, frequency: 50 }), at(2, 3, { ...land, value: 3e-6 })],
      T,
    );
    expect(least).toMatchObject({ value: 3e-6, frequency: 45.3, wall: 'left' });
    const bend = { id: 'tight-bend', limit: 0.01 } as const;
    const [most] = mergeNear(
      [at(1, 2, { ...bend, value: 0.05, wall: 'right' }), at(2, 3, { ...bend, value: 0.02 })],
      T,
    );
    expect(most).toMatchObject({ value: 0.05, wall: 'right' });
  });

  test('cautions and faults that alternate within two seconds are one fault', () => {
    const bend = { id: 'tight-bend', limit: 0.01 } as const;
    const fault = { ...bend, severity: 'fault', value: 0.02 } as const;
    const caution = { ...bend, severity: 'caution', value: 0.3 } as const;
    const alternating = [at(0, 4, caution), at(6, 7, fault), at(7, 9, caution), at(9, 10, fault)];
    const [one, ...others] = mergeNear(alternating, T);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ severity: 'fault', value: 0.02, atSeconds: 0, untilSeconds: 10 });
    expect(mergeNear([at(0, 4, caution), at(6.1, 7, fault)], T)).toHaveLength(2);
  });

  test('are merged in a forecast', () => {
    const motion = emptyMotion(10 * T);
    for (const quarter of [20, 24]) motion.approachLoose[quarter * 16] = OPEN - 5e-6;
    motion.approachLoose[24 * 16] = OPEN - 4e-6;
    const { findings } = findingsOf(motion);
    expect(said(findings)).toEqual(['land-low caution']);
    expect(findings[0]?.value).toBeWithin(4e-6, 1e-12);
    expect(findings[0]?.untilSeconds).toBeWithin((24 + 1 / 16) * QUARTER, 1e-9);
  });
});

describe('wall and frequency of a steep second', () => {
  test('are those of the quarter that has most of it, not of its first', () => {
    const motion = emptyMotion(10 * T);
    const few = Array.from({ length: 1000 }, (_, n) => (n < 15 ? 1.5 : 1e-3));
    const many = few.map((_, n) => (n < 100 ? 1.5 : 1e-3));
    for (let quarter = 0; quarter < 40; quarter++) {
      fillHistogram(motion.left.edgeVelocityHistogram, quarter, quarter === 20 ? few : [1e-3]);
      fillHistogram(motion.right.edgeVelocityHistogram, quarter, quarter === 21 ? many : [1e-3]);
    }
    for (const [wall, quarter, hertz] of [
      [motion.left, 20, 3000],
      [motion.right, 21, 9000],
    ] as const) {
      wall.velocityPeak.fill(1.5);
      wall.velocityMeanSquare[quarter] = 1e-4;
      wall.accelerationMeanSquare[quarter] = 1e-4 * (2 * Math.PI * hertz) ** 2;
    }
    const [facet] = findingsOf(motion).findings;
    expect(facet).toMatchObject({ id: 'facet', severity: 'fault', wall: 'right' });
    expect(facet?.frequency).toBeWithin(9000, 1e-6);
  });
});

describe('echo', () => {
  function loudAt(quarters: readonly number[], decibels: number) {
    const motion = emptyMotion(10 * T);
    motion.approachLoose.fill(OPEN - 20e-6);
    for (const quarter of quarters) {
      motion.left.velocityMeanSquare[quarter] = REFERENCE * 10 ** (decibels / 10);
      motion.right.velocityMeanSquare[quarter] = REFERENCE * 10 ** (decibels / 10);
    }
    return motion;
  }

  test.each([
    [-11.9, ['echo-risk note']],
    [-12.1, []],
  ])('a turn %d dB re the reference beside silence: %j', (decibels, expected) => {
    expect(said(findingsOf(loudAt([20], decibels)).findings)).toEqual(expected);
  });

  test('of places that follow each other within a turn is one note, from first to last', () => {
    const { findings } = findingsOf(loudAt([20, 22, 25], 0));
    expect(said(findings)).toEqual(['echo-risk note']);
    expect(findings[0]?.atSeconds).toBeWithin(20 * QUARTER, 1e-9);
    expect(findings[0]?.untilSeconds).toBeWithin(30 * QUARTER, 1e-9);
  });

  test('into the silent turns before and after the program is nobody to hear', () => {
    expect(said(findingsOf(loudAt([0, 1, 2, 3], 0)).findings)).toEqual(['echo-risk note']);
    const all = Array.from({ length: 40 }, (_, quarter) => quarter);
    expect(said(findingsOf(loudAt(all, 0)).findings)).toEqual([]);
  });
});
