import { describe, expect, test } from 'vitest';
import type { MotionSummary, ProgramChecks } from '../../src/analysis/motion.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingsOf, said } from '../support/findings-of.js';

describe('the file itself', () => {
  const checked = (changes: Partial<ProgramChecks>): MotionSummary => {
    const motion = emptyMotion(3.6);
    return { ...motion, program: { ...motion.program, ...changes } };
  };

  test.each([
    ['clipped caution', { clippedRuns: 3, firstClipSeconds: 1.5 }, {}],
    ['over-peak note', { truePeak: [0.9, 1.01] }, {}],
    ['dc-offset caution', { mean: [0, -0.004] }, {}],
    ['silent fault', { samplePeak: [0, 0], meanSquare: [0, 0] }, {}],
    ['one-sided caution', { meanSquare: [1e-2, 0.9e-6] }, {}],
    ['mono note', {}, { channels: 1 }],
    ['mono note', { identicalChannels: true }, {}],
    ['polarity caution', { correlation: -0.9 }, {}],
    ['truncated caution', {}, { truncated: true }],
    ['rate-low note', {}, { sampleRate: 32_000 }],
    ['ultrasonic note', { ultrasonicMeanSquare: 1e-6 }, {}],
  ] as const)('%s', (expected, program, source) => {
    expect(said(findingsOf(checked(program), {}, source).findings)).toEqual([expected]);
  });

  test.each([
    [{ truePeak: [1, 1] }],
    [{ mean: [0.003, -0.003] }],
    [{ samplePeak: [0.0011, 0] }],
    [{ meanSquare: [1e-2, 1.1e-6] }],
    [{ correlation: -0.4 }],
    [{ ultrasonicMeanSquare: 4e-7 }],
  ] as const)('says nothing of %j', (program) => {
    expect(findingsOf(checked(program)).findings).toEqual([]);
  });

  test('values and channels are those of the file', () => {
    const [offset] = findingsOf(checked({ mean: [0, -0.01] })).findings;
    expect(offset).toMatchObject({ wall: 'right', unit: 'decibel-full-scale', limit: -50 });
    expect(offset?.value).toBeWithin(-40, 1e-9);
    const [over] = findingsOf(checked({ truePeak: [0.5, Math.SQRT2] })).findings;
    expect(over?.value).toBeWithin(3.0103, 1e-4);
    const [hiss] = findingsOf(checked({ ultrasonicMeanSquare: 0.5e-5 })).findings;
    expect(hiss?.value).toBeWithin(-50, 1e-9);
  });
});
