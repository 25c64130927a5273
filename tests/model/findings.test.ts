import { describe, expect, test } from 'vitest';
import type { MotionSummary } from '../../src/analysis/motion.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingsOf, said } from '../support/findings-of.js';
import { fillHistogram } from '../support/motion-of.js';

const T = 1.8;
const QUARTER = T / 4;
/** Land of the unmodulated groove at 100 µm, as findingsOf cuts it. */
const OPEN = 100e-6 - 50.8e-6;

/** Ten turns that lose so much land from quarter 20 on. */
function losing(land: number, quarters = 1): MotionSummary {
  const motion = emptyMotion(10 * T);
  motion.approach.fill(land, 20 * 16, (20 + quarters) * 16);
  motion.approachLoose.fill(land, 20 * 16, (20 + quarters) * 16);
  return motion;
}

/** Ten turns of which a share of every quarter moves or bends at `magnitude`. */
function tracing(row: 'edgeVelocity' | 'acceleration', magnitude: number, share: number) {
  const motion = emptyMotion(10 * T);
  const loud = Math.round(1000 * share);
  const samples = Array.from({ length: 1000 }, (_, n) => (n < loud ? magnitude : 1e-3));
  for (let quarter = 0; quarter < 40; quarter++) {
    fillHistogram(motion.left[`${row}Histogram`], quarter, samples);
  }
  motion.left.velocityPeak.fill(row === 'edgeVelocity' ? magnitude / Math.SQRT2 : 1e-3);
  motion.left.accelerationPeak.fill(row === 'acceleration' ? magnitude : 1);
  motion.left.velocityMeanSquare.fill(1e-4);
  motion.left.accelerationMeanSquare.fill(1e-4 * (2 * Math.PI * 7000) ** 2);
  return motion;
}

describe('a side without a fault', () => {
  test('has no finding and is clear', () => {
    const { findings, verdict } = findingsOf(losing(OPEN - 12.7e-6));
    expect({ findings, verdict }).toEqual({ findings: [], verdict: 'clear' });
  });
});

describe('land', () => {
  test.each([
    [OPEN - 12.7e-6 + 0.02e-6, ['land-low caution'], 'caution'],
    [OPEN - 0.02e-6, ['land-low caution'], 'caution'],
    [OPEN + 0.02e-6, ['overcut fault'], 'fault'],
  ])('of a turn that closes in by %d m: %j', (taken, expected, verdict) => {
    const forecast = findingsOf(losing(taken));
    expect(said(forecast.findings)).toEqual(expected);
    expect(forecast.verdict).toBe(verdict);
    expect(forecast.findings[0]?.value).toBeWithin(OPEN - taken, 1e-12);
    expect(forecast.findings[0]?.atSeconds).toBeWithin(20 * QUARTER, 1e-9);
  });

  test('of neighbouring quarters is one finding, of others another', () => {
    const motion = losing(OPEN + 1e-6, 3);
    motion.approachLoose[30 * 16 + 5] = OPEN + 5e-6;
    const { findings } = findingsOf(motion);
    expect(said(findings)).toEqual(['overcut fault', 'overcut fault']);
    expect(findings[0]).toMatchObject({ value: expect.any(Number), limit: 0, unit: 'metre' });
    expect(findings[0]?.untilSeconds).toBeGreaterThan(22 * QUARTER);
    expect(findings[1]?.atSeconds).toBeWithin((30 + 5 / 16) * QUARTER, 1e-9);
    expect(findings[1]?.value).toBeWithin(-5e-6, 1e-12);
  });

  test('outside the first silent turn lies the lead-in: no finding there', () => {
    // A groove so wide that silence itself overcuts, but for the plan that opens for it.
    const wide = { executes: 'plan', baseWidth: 95e-6 } as const;
    const { findings, plan } = findingsOf(emptyMotion(2 * T), wide);
    expect(plan.landMin).toBeWithin(5e-6, 1e-12);
    expect(said(findings)).toEqual([]);
  });
});

describe('the groove', () => {
  test('is too narrow where lift leaves less than widthMin', () => {
    const motion = emptyMotion(5 * T);
    motion.lift[100] = 12.7e-6 + 0.5e-6;
    const { findings, verdict } = findingsOf(motion);
    expect(said(findings)).toEqual(['lift fault']);
    expect(findings[0]?.value).toBeWithin(24.4e-6, 1e-12);
    expect(findings[0]?.atSeconds).toBeWithin((100 * T) / 64, 1e-9);
    expect(verdict).toBe('fault');
  });

  test('is too deep where the cut goes past depthMax', () => {
    const motion = emptyMotion(5 * T);
    motion.sink[100] = 10e-6;
    const atBase = 25.4e-6 - (Math.SQRT2 - 1) * 4e-6;
    const { findings } = findingsOf(motion, { depthMax: atBase + 9.9e-6 });
    expect(said(findings)).toEqual(['too-deep fault']);
    expect(findings[0]?.value).toBeWithin(atBase + 10e-6, 1e-12);
    expect(said(findingsOf(motion, { depthMax: atBase + 10.1e-6 }).findings)).toEqual([]);
  });

  test('with a depth cap that lift cannot keep gets too narrow, never too deep', () => {
    const motion = emptyMotion(5 * T);
    motion.lift.fill(30e-6, 100, 110);
    motion.sink.fill(12e-6, 100, 110);
    const { findings } = findingsOf(motion, { executes: 'plan', depthMax: 40e-6, landMin: 0 });
    expect(said(findings)).toEqual(['lift fault']);
  });
});

describe('length', () => {
  test('past the inner diameter is a fault, past the preferred one a caution', () => {
    const motion = emptyMotion(600);
    const end = 0.2921 - (2 * 100e-6 * 600) / T;
    const fault = findingsOf(motion, { innerDiameter: end + 0.001 });
    expect(said(fault.findings)).toEqual(['too-long fault']);
    expect(fault.findings[0]?.detail).toBe('base-pitch');
    expect(fault.findings[0]?.value).toBeWithin(end, 1e-9);
    expect(fault.fixed).toMatchObject({ fits: false });
    // 0.5 mm of radius are five turns.
    expect(fault.findings[0]?.atSeconds).toBeWithin(600 - 5 * T, 1e-6);
    const caution = findingsOf(motion, { preferredEndDiameter: end + 0.001 });
    expect(said(caution.findings)).toEqual(['too-long caution']);
    const fits = { innerDiameter: end - 0.001, preferredEndDiameter: end - 0.0005 };
    expect(said(findingsOf(motion, fits).findings)).toEqual([]);
  });
});

test('what is too long for its modulation alone would fit at a lower level', () => {
  const motion = emptyMotion(600);
  motion.approach.fill(80e-6);
  motion.approachLoose.fill(80e-6);
  const end = 0.2921 - (2 * 100e-6 * 600) / T;
  const { findings } = findingsOf(motion, { executes: 'plan', innerDiameter: end - 0.001 });
  expect(findings).toMatchObject([{ id: 'too-long', severity: 'fault', detail: null }]);
});

describe('slope and bend, in more than a hundredth of a second', () => {
  const speed = (2 * Math.PI * 0.14605) / T;
  const bendAt = (tip: number) => speed ** 2 / tip;

  test.each([
    ['edgeVelocity', 0.6 * speed, 0.5, []],
    ['edgeVelocity', 0.9 * speed, 0.005, []],
    ['edgeVelocity', 0.9 * speed, 0.05, ['facet caution']],
    ['edgeVelocity', 1.3 * speed, 0.05, ['facet fault']],
    ['acceleration', bendAt(20e-6), 0.5, []],
    ['acceleration', bendAt(12e-6), 0.005, []],
    ['acceleration', bendAt(12e-6), 0.05, ['tight-bend caution']],
    ['acceleration', bendAt(6e-6), 0.05, ['tight-bend fault']],
  ] as const)('%s %d for %d of the time: %j', (row, magnitude, share, expected) => {
    const { findings } = findingsOf(tracing(row, magnitude, share));
    expect(said(findings)).toEqual(expected);
    if (findings[0] === undefined) return;
    expect(findings[0]).toMatchObject({ limit: 0.01, unit: 'ratio', wall: 'left', atSeconds: 0 });
    expect(findings[0].frequency).toBeWithin(7000, 1e-6);
  });
});

test('a second that is too steep is told from its start to its end', () => {
  const motion = emptyMotion(10 * T);
  const samples = Array.from({ length: 100 }, () => 1.5);
  for (const wall of [motion.left, motion.right]) {
    for (let quarter = 0; quarter < 40; quarter++) {
      fillHistogram(wall.edgeVelocityHistogram, quarter, quarter === 20 ? samples : [1e-3]);
    }
    wall.velocityPeak.fill(1.5);
  }
  const { findings } = findingsOf(motion);
  expect(said(findings)).toEqual(['facet fault']);
  // Windows of two quarters: both that hold quarter 20.
  expect(findings[0]?.atSeconds).toBeWithin(19 * QUARTER, 1e-9);
  expect(findings[0]?.untilSeconds).toBeWithin(22 * QUARTER, 1e-9);
});

describe('the other findings about the plan', () => {
  test('low-vertical: more than half of what widthMin leaves, 6.35 µm', () => {
    const motion = emptyMotion(5 * T);
    motion.lowBand.verticalAmplitude[3] = 6.36e-6;
    motion.lowBand.verticalAmplitude[9] = 6.34e-6;
    motion.lowBand.strongestFrequency.fill(44);
    const { findings } = findingsOf(motion);
    expect(said(findings)).toEqual(['low-vertical caution']);
    expect(findings[0]).toMatchObject({ frequency: 44, atSeconds: 3 * QUARTER });
  });

  test('echo-risk: a loud turn beside a quiet one with less than echoLand', () => {
    const motion = losing(OPEN - 20e-6);
    const loud = 0.07 ** 2 / 4;
    motion.left.velocityMeanSquare.fill(loud, 20, 21);
    motion.right.velocityMeanSquare.fill(loud, 20, 21);
    const { findings, verdict } = findingsOf(motion);
    expect(said(findings)).toEqual(['echo-risk note']);
    expect(findings[0]?.value).toBeWithin(20e-6, 1e-12);
    expect(verdict).toBe('clear');
    expect(said(findingsOf(motion, { echoLand: 19e-6 }).findings)).toEqual([]);
    // Neither is a turn quiet that is 39 dB under the reference.
    motion.left.velocityMeanSquare.fill(loud * 10 ** -3.9, 16, 17);
    motion.right.velocityMeanSquare.fill(loud * 10 ** -3.9, 16, 17);
    motion.left.velocityMeanSquare.fill(loud * 10 ** -3.9, 24, 25);
    motion.right.velocityMeanSquare.fill(loud * 10 ** -3.9, 24, 25);
    expect(said(findingsOf(motion).findings)).toEqual([]);
  });

  test('pitch-limit: what pitchMax takes from the land', () => {
    const motion = losing(150e-6);
    const plan = { executes: 'plan', landMin: 12.7e-6 } as const;
    const { findings } = findingsOf(motion, { ...plan, pitchMax: 210e-6 });
    const wanted = 150e-6 + 50.8e-6 + 12.7e-6;
    expect(said(findings)).toEqual(['pitch-limit fault', 'land-low caution']);
    expect(findings[0]?.value).toBeWithin(wanted, 1e-12);
    expect(findings[0]?.limit).toBe(210e-6);
    expect(said(findingsOf(motion, { ...plan, pitchMax: 214e-6 }).findings)).toEqual([]);
  });

  test('pitch-limit: a start too loud for the ramp from base pitch, mended by more silence', () => {
    const motion = emptyMotion(10 * T);
    motion.approachLoose.fill(150e-6, 0, 64);
    const plan = { executes: 'plan', pitchOpenSlew: 20e-6 } as const;
    const { findings } = findingsOf(motion, plan);
    expect(said(findings)).toEqual(['pitch-limit fault']);
    expect(findings[0]).toMatchObject({ detail: 'ramp', atSeconds: 0 });
    // The turn before the first sample: 213.5 µm wanted throughout, 120, 140, 160, 180 µm reached.
    expect(findings[0]?.value).toBeWithin(150e-6 + 50.8e-6 + 12.7e-6, 1e-12);
    expect(findings[0]?.limit).toBeWithin(150e-6, 1e-12);
    expect(said(findingsOf(motion, { ...plan, silentTurns: 3 }).findings)).toEqual([]);
  });
});

test('the worst comes first, then what comes first in time', () => {
  const motion = losing(OPEN - 5e-6);
  motion.lift[40] = 20e-6;
  motion.lowBand.verticalAmplitude[2] = 1e-5;
  const { findings } = findingsOf(motion, {}, { channels: 1, truncated: true });
  expect(said(findings)).toEqual([
    'lift fault',
    'truncated caution',
    'low-vertical caution',
    'land-low caution',
    'mono note',
  ]);
});
