import { describe, expect, test } from 'vitest';
import { mergeNear } from '../../src/model/findings/merge-near.js';
import { spansOf } from '../../src/model/findings/spans.js';
import type { Finding } from '../../src/model/forecast-types.js';
import type { Settings } from '../../src/settings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingsOf, said } from '../support/findings-of.js';
import { findingWith } from '../support/forecast-fixture.js';
import { settingsWith } from '../support/model-settings.js';

const T = 1.8;
const { machine } = settingsWith();

/** Ten turns whose outer wall swings by so much in the first, as the automation hears it. */
function loudStart(outward = 100e-6) {
  const motion = emptyMotion(10 * T);
  for (const row of [motion.outward, motion.approach, motion.approachLoose])
    row.fill(outward, 0, 64);
  return motion;
}

const limits = (motion: ReturnType<typeof emptyMotion>, changes: Partial<Settings>) =>
  findingsOf(motion, changes).findings.filter(({ id }) => id === 'pitch-limit');

describe('the ramp before a loud start', () => {
  const slow = 15e-6;
  const fast = 1;

  test('is the executed plan’s own: the machine’s where it has a slew, else the profile’s', () => {
    const by = (executes: 'machine' | 'plan', own: number | null, profile: number) =>
      limits(loudStart(), {
        executes,
        machine: { ...machine, openSlew: own },
        pitchOpenSlew: profile,
      }).map(({ detail }) => detail);
    expect(by('machine', slow, fast)).toEqual(['ramp']);
    expect(by('machine', fast, slow)).toEqual([]);
    expect(by('machine', null, slow)).toEqual(['ramp']);
    expect(by('machine', null, fast)).toEqual([]);
    expect(by('plan', slow, fast)).toEqual([]);
    expect(by('plan', fast, slow)).toEqual(['ramp']);
  });

  test('is no fault where enough land is left, nor is land that is short for another reason', () => {
    const motion = loudStart(20e-6);
    // It hears five times what there is: it wants far more than it needs.
    const eager = { ...machine, gain: 5, openSlew: slow };
    const changes = { executes: 'machine', machine: eager } as const;
    expect(limits(motion, changes)).toEqual([]);
    motion.approachLoose[30 * 16] = 45e-6;
    const { findings } = findingsOf(motion, changes);
    expect(said(findings)).toEqual(['land-low caution']);
  });

  test('is told with both mean pitches, in metres', () => {
    const [ramp] = limits(loudStart(), { executes: 'plan', pitchOpenSlew: slow });
    expect(ramp).toMatchObject({ severity: 'fault', unit: 'metre', detail: 'ramp' });
    // 100 + 50.8 + 12.7 µm; the turn before the start: 115, 130, 145, 160 µm.
    expect(ramp?.value).toBeWithin(163.5e-6, 1e-12);
    expect(ramp?.limit).toBeWithin(137.5e-6, 1e-12);
  });
});

describe('a pitch at its limit', () => {
  test('is no fault where enough land is left', () => {
    const eager = { ...machine, gain: 5, openSlew: 1 };
    const motion = emptyMotion(10 * T);
    for (const row of [motion.outward, motion.approach, motion.approachLoose]) {
      row.fill(20e-6, 320, 384);
    }
    expect(limits(motion, { executes: 'machine', machine: eager, pitchMax: 120e-6 })).toEqual([]);
  });

  test('is none where no more was wanted', () => {
    const motion = emptyMotion(10 * T);
    motion.approachLoose[320] = 45e-6;
    const { findings } = findingsOf(motion, { basePitch: 100e-6, pitchMax: 100e-6 });
    expect(said(findings)).toEqual(['land-low caution']);
  });
});

describe('spans of what is wrong', () => {
  const rising = (a: number, b: number) => a > b;

  test('end where it does, or where the look ends', () => {
    expect(spansOf(2, 6, () => true, rising)).toEqual([{ first: 2, last: 5, worst: 5 }]);
    expect(spansOf(2, 6, () => false, rising)).toEqual([]);
    const isWrong = (quarter: number) => quarter !== 4;
    expect(spansOf(2, 7, isWrong, (a, b) => a < b)).toEqual([
      { first: 2, last: 3, worst: 2 },
      { first: 5, last: 6, worst: 5 },
    ]);
  });

  test('have their worst place wherever it lies', () => {
    const badness = [0, 1, 5, 3, 0];
    const isWorse = (a: number, b: number) => badness[a]! > badness[b]!;
    expect(spansOf(0, 5, (at) => badness[at]! > 0, isWorse)).toEqual([
      { first: 1, last: 3, worst: 2 },
    ]);
  });
});

describe('findings that are near to each other', () => {
  const low = (atSeconds: number, value: number, more: Partial<Finding> = {}) =>
    findingWith({ atSeconds, untilSeconds: atSeconds + 1, value, ...more });
  const told = (findings: readonly Finding[]) =>
    mergeNear(findings, T).map(({ atSeconds, untilSeconds, value }) => [
      atSeconds,
      untilSeconds,
      value,
    ]);

  test('are one with the worst of them, whichever comes first', () => {
    expect(told([low(10, 3e-6), low(12, 6e-6)])).toEqual([[10, 13, 3e-6]]);
    expect(told([low(12, 3e-6), low(10, 6e-6)])).toEqual([[10, 13, 3e-6]]);
    const fault = { severity: 'fault' } as const;
    expect(told([low(10, 3e-6, fault), low(12, 6e-6, fault)])).toEqual([[10, 13, 3e-6]]);
    expect(told([low(10, 6e-6, fault), low(12, 3e-6)])).toEqual([[10, 13, 6e-6]]);
    expect(told([low(10, 3e-6), low(12, 6e-6, fault)])).toEqual([[10, 13, 6e-6]]);
  });

  test('stay two where they say different things, and where they are a turn apart', () => {
    expect(told([low(10, 3e-6, { detail: 'a' }), low(12, 6e-6, { detail: 'b' })])).toHaveLength(2);
    expect(told([low(10, 3e-6, { detail: 'a' }), low(12, 6e-6, { detail: 'a' })])).toHaveLength(1);
    expect(told([low(10, 3e-6), low(12.8, 6e-6)])).toHaveLength(1);
    expect(told([low(10, 3e-6), low(12.81, 6e-6)])).toHaveLength(2);
    const fault = { severity: 'fault' } as const;
    expect(told([low(10, 3e-6), low(12.99, 6e-6, fault)])).toHaveLength(1);
    expect(told([low(10, 3e-6), low(13.01, 6e-6, fault)])).toHaveLength(2);
  });
});

test('what is about the whole side comes before what has a place', () => {
  const motion = emptyMotion(10 * T);
  const loud = 0.07 ** 2 / 4;
  motion.left.velocityMeanSquare[20] = loud;
  motion.right.velocityMeanSquare[20] = loud;
  motion.approachLoose[20 * 16 + 5] = 100e-6 - 50.8e-6 - 20e-6;
  const { findings } = findingsOf(motion, { startDiameter: 0.295 });
  expect(said(findings)).toEqual(['off-standard note', 'echo-risk note']);
});
