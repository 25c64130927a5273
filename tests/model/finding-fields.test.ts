import { describe, expect, test } from 'vitest';
import type { ProgramChecks } from '../../src/analysis/motion.js';
import { verdictOf } from '../../src/model/findings/all-findings.js';
import { bassFindings } from '../../src/model/findings/bass-findings.js';
import { fileFindings } from '../../src/model/findings/file-findings.js';
import { isTooDeep, isTooNarrow } from '../../src/model/findings/groove-findings.js';
import { isOvercut } from '../../src/model/findings/land-findings.js';
import { halfWidthAt } from '../../src/model/groove.js';
import { plannedSide } from '../../src/model/planned-side.js';
import { NOTHING_BY_HAND } from '../../src/model/side-plan-input.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingsOf } from '../support/findings-of.js';
import { findingWith } from '../support/forecast-fixture.js';
import { EXACT, SOUND_SOURCE, settingsWith } from '../support/model-settings.js';

const T = 1.8;
const QUARTER = T / 4;
const BIN = QUARTER / 16;
/** Land of the unmodulated groove at 100 µm, as findingsOf cuts it. */
const OPEN = 100e-6 - 50.8e-6;
/** What a finding has where nothing is said of it. */
const NOTHING = {
  atSeconds: null,
  untilSeconds: null,
  value: null,
  limit: null,
  unit: 'none',
  wall: null,
  frequency: null,
  detail: null,
} as const;

/** Three neighbouring quarters of which the middle one is the worst, and where. */
const WORSE = [
  [20, 1],
  [21, 3],
  [22, 2],
] as const;

describe('of neighbouring quarters the worst is told, from the first to the last', () => {
  test('of land', () => {
    const motion = emptyMotion(10 * T);
    for (const [quarter, more] of WORSE) {
      motion.approachLoose[quarter * 16 + 5] = OPEN - 12.7e-6 + more * 1e-6;
      motion.approachLoose[quarter * 16 + 80 + 5] = OPEN + more * 1e-6;
    }
    const { findings } = findingsOf(motion);
    expect(findings.map(({ id }) => id)).toEqual(['overcut', 'land-low']);
    const [overcut, low] = findings;
    expect(low?.value).toBeWithin(12.7e-6 - 3e-6, 1e-12);
    expect(low?.limit).toBeWithin(12.7e-6, 1e-18);
    expect(overcut?.value).toBeWithin(-3e-6, 1e-12);
    expect([low?.atSeconds, overcut?.atSeconds].map(Number)).toBeWithin(
      [20 * QUARTER + 5 * BIN, 25 * QUARTER + 5 * BIN],
      1e-9,
    );
    expect([low?.untilSeconds, overcut?.untilSeconds].map(Number)).toBeWithin(
      [22 * QUARTER + 6 * BIN, 27 * QUARTER + 6 * BIN],
      1e-9,
    );
  });

  test('of lift, with the frequency of its own quarter', () => {
    const motion = emptyMotion(10 * T);
    for (const [quarter, more] of WORSE) {
      motion.lift[quarter * 16 + 7] = 12.7e-6 + more * 1e-6;
      motion.lowBand.strongestFrequency[quarter] = 30 + quarter;
    }
    const [lift, ...others] = findingsOf(motion).findings;
    expect(others).toEqual([]);
    expect(lift).toMatchObject({ id: 'lift', wall: 'both', unit: 'metre', frequency: 51 });
    expect(lift?.value).toBeWithin(25.4e-6 - 6e-6, 1e-12);
    expect(lift?.limit).toBeWithin(25.4e-6, 1e-18);
    expect(lift?.atSeconds).toBeWithin(20 * QUARTER + 7 * BIN, 1e-9);
    expect(lift?.untilSeconds).toBeWithin(22 * QUARTER + 8 * BIN, 1e-9);
  });

  test('of depth, with the frequency of its own quarter', () => {
    const motion = emptyMotion(10 * T);
    for (const [quarter, more] of WORSE) {
      motion.sink[quarter * 16 + 7] = 10e-6 + more * 1e-6;
      motion.lowBand.strongestFrequency[quarter] = 30 + quarter;
    }
    const depthMax = 25.4e-6 - (Math.SQRT2 - 1) * 4e-6 + 10.5e-6;
    const [deep, ...others] = findingsOf(motion, { depthMax }).findings;
    expect(others).toEqual([]);
    expect(deep).toMatchObject({ id: 'too-deep', wall: 'both', unit: 'metre', frequency: 51 });
    expect(deep?.value).toBeWithin(depthMax + 2.5e-6, 1e-12);
    expect(deep?.limit).toBe(depthMax);
    expect(deep?.atSeconds).toBeWithin(20 * QUARTER, 1e-9);
    expect(deep?.untilSeconds).toBeWithin(23 * QUARTER, 1e-9);
  });

  test('of vertical bass, at the planned level', () => {
    const motion = emptyMotion(10 * T);
    for (const [quarter, more] of WORSE) {
      motion.lowBand.verticalAmplitude[quarter] = 6.35e-6 + more * 1e-6;
      motion.lowBand.strongestFrequency[quarter] = 30 + quarter;
    }
    const [bass, ...others] = findingsOf(motion).findings;
    expect(others).toEqual([]);
    expect(bass).toMatchObject({ id: 'low-vertical', wall: 'both', unit: 'metre', frequency: 51 });
    expect(bass?.value).toBeWithin(9.35e-6, 1e-12);
    expect(bass?.limit).toBeWithin(6.35e-6, 1e-12);
    expect(bass?.atSeconds).toBeWithin(20 * QUARTER, 1e-9);
    expect(bass?.untilSeconds).toBeWithin(23 * QUARTER, 1e-9);
  });

  test('of echoes', () => {
    const motion = emptyMotion(10 * T);
    const loud = 0.07 ** 2 / 4;
    for (const [quarter, more] of WORSE) {
      motion.left.velocityMeanSquare[quarter] = loud;
      motion.right.velocityMeanSquare[quarter] = loud;
      motion.approachLoose[quarter * 16 + 5] = OPEN - 25.4e-6 + more * 1e-6;
    }
    const [echo, ...others] = findingsOf(motion).findings;
    expect(others).toEqual([]);
    expect(echo).toMatchObject({ id: 'echo-risk', severity: 'note', unit: 'metre', wall: null });
    expect(echo?.value).toBeWithin(25.4e-6 - 3e-6, 1e-12);
    expect(echo?.atSeconds).toBeWithin(20 * QUARTER, 1e-9);
    expect(echo?.untilSeconds).toBeWithin(23 * QUARTER, 1e-9);
    // 5 nm past a limit is on it.
    for (const [quarter] of WORSE) motion.approachLoose[quarter * 16 + 5] = OPEN - 25.4e-6 + 4e-9;
    expect(findingsOf(motion).findings).toEqual([]);
  });

  test('of a clipped pitch: the widest that was wanted', () => {
    const motion = emptyMotion(10 * T);
    for (const [quarter, more] of WORSE) motion.approachLoose[quarter * 16] = 140e-6 + more * 5e-6;
    const changes = { executes: 'plan', pitchMax: 150e-6, pitchOpenSlew: 1, pitchCloseSlew: 1 };
    const { findings } = findingsOf(motion, { ...changes, executes: 'plan' });
    const limit = findings.find(({ id }) => id === 'pitch-limit');
    expect(limit?.value).toBeWithin(155e-6 + 50.8e-6 + 12.7e-6, 1e-12);
    expect(limit).toMatchObject({ limit: 150e-6, unit: 'metre', detail: 'pitch-max' });
    expect(limit?.atSeconds).toBeWithin(20 * QUARTER, 1e-9);
    expect(limit?.untilSeconds).toBeWithin(22 * QUARTER + BIN, 1e-9);
  });
});

test('the narrower end of a quarter decides on its vertical bass', () => {
  const settings = settingsWith({ ...EXACT, depthOpenSlew: 5e-6, depthCloseSlew: 5e-6 });
  // 60 µm from quarter 12 on: in the two before it the half-width opens by 4.6 µm.
  const baseWidth = [{ fromSeconds: 12 * QUARTER, width: 60e-6 }];
  const motion = emptyMotion(10 * T);
  const found = (quarter: number, amplitude: number) => {
    motion.lowBand.verticalAmplitude.fill(0);
    motion.lowBand.verticalAmplitude[quarter] = amplitude;
    const side = plannedSide(motion, settings, { ...NOTHING_BY_HAND, baseWidth });
    return bassFindings(side, 1).map(({ limit }) => limit);
  };
  // (50.8 − 25.4)/4 and (60 − 25.4)/4.
  expect(found(11, 6.34e-6)).toEqual([]);
  expect(found(11, 6.36e-6)).toHaveLength(1);
  expect(found(12, 8.64e-6)).toEqual([]);
  expect(found(12, 8.66e-6)).toHaveLength(1);
});

test('a length is past its limit from 5 nm on', () => {
  const settings = settingsWith({ widthMin: 25e-6, depthMax: 60e-6, bottomRadius: 4e-6 });
  const side = plannedSide(emptyMotion(T), settings);
  const atDepth = (depth: number) => 2 * halfWidthAt(depth, 4e-6);
  expect([4e-9, 6e-9].map((under) => isTooNarrow(side, 25e-6 - under))).toEqual([false, true]);
  expect([4e-9, 6e-9].map((over) => isTooDeep(side, atDepth(60e-6 + over)))).toEqual([false, true]);
  expect([4e-9, 6e-9].map((under) => isOvercut(-under))).toEqual([false, true]);
});

describe('the file itself', () => {
  const { program } = emptyMotion(T);
  const of = (changes: Partial<ProgramChecks>, source = {}) =>
    fileFindings({ ...program, ...changes }, { ...SOUND_SOURCE, ...source });
  const decibels = 'decibel-full-scale';

  test.each([
    ['rate-low', 'note', {}, { sampleRate: 32e3 }, { value: 32e3, limit: 44_100, unit: 'hertz' }],
    ['silent', 'fault', { samplePeak: [0, 0] }, {}, { limit: -60, unit: decibels }],
    [
      'clipped',
      'caution',
      { clippedRuns: 3, firstClipSeconds: 1.5 },
      {},
      { atSeconds: 1.5, value: 3, limit: 0, unit: 'count' },
    ],
    ['over-peak', 'note', { truePeak: [10, 1] }, {}, { value: 20, limit: 0, unit: decibels }],
    [
      'ultrasonic',
      'note',
      { ultrasonicMeanSquare: 0.5e-4 },
      {},
      { value: expect.closeTo(-40, 9), limit: -60, unit: decibels },
    ],
    ['one-sided', 'caution', { meanSquare: [1e-2, 0.9e-6] }, {}, { wall: 'left' }],
    ['one-sided', 'caution', { meanSquare: [0.9e-6, 1e-2] }, {}, { wall: 'right' }],
    ['polarity', 'caution', { correlation: -0.8 }, {}, { value: -0.8, limit: -0.5, unit: 'ratio' }],
    ['mono', 'note', { identicalChannels: true }, {}, {}],
    ['truncated', 'caution', {}, { truncated: true }, {}],
    // −50 dB is 0.00316: of the larger one, and of both only where both are over it.
    ['dc-offset', 'caution', { mean: [0.01, -0.003] }, {}, dc('left')],
    ['dc-offset', 'caution', { mean: [-0.003, 0.01] }, {}, dc('right')],
    ['dc-offset', 'caution', { mean: [0.01, -0.0033] }, {}, dc('both')],
  ] as const)('%s has the figures of a %s', (id, severity, changes, source, figures) => {
    expect(of(changes, source)).toEqual([{ ...NOTHING, id, severity, ...figures }]);
  });

  function dc(wall: 'left' | 'right' | 'both') {
    return { value: expect.closeTo(-40, 9), limit: -50, unit: decibels, wall } as const;
  }
});

test('what the house has accepted does not count for the verdict', () => {
  const accepted = { reason: 'invented' };
  const fault = findingWith({ severity: 'fault' });
  const caution = findingWith({ severity: 'caution' });
  const note = findingWith({ severity: 'note' });
  expect(verdictOf([note, caution, fault])).toBe('fault');
  expect(verdictOf([note, caution, { ...fault, accepted }])).toBe('caution');
  expect(verdictOf([note, { ...caution, accepted }])).toBe('clear');
  expect(verdictOf([])).toBe('clear');
});
