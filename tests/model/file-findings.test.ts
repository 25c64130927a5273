import { describe, expect, test } from 'vitest';
import type { MotionSummary, ProgramChecks } from '../../src/analysis/motion.js';
import { gapFindings } from '../../src/model/findings/gap-findings.js';
import { emptyMotion } from '../support/empty-motion.js';
import { findingsOf, said } from '../support/findings-of.js';

const jump = (atSeconds: number, channel: 'left' | 'right', size = 0.5) =>
  ({ atSeconds, channel, size, around: 0 }) as const;
const span = (fromSeconds: number, untilSeconds: number) => ({ fromSeconds, untilSeconds });

describe('the file itself', () => {
  const checked = (changes: Partial<ProgramChecks>): MotionSummary => {
    const motion = emptyMotion(3.6);
    return { ...motion, program: { ...motion.program, ...changes } };
  };

  test.each([
    ['clipped caution', { clippedRuns: 3, firstClipSeconds: 1.5 }, {}],
    ['over-peak note', { truePeak: [0.9, 1.01] }, {}],
    ['jump caution', { jumps: { count: 1, largest: [jump(1, 'left')] } }, {}],
    ['gap-inside note', { silence: { count: 1, seconds: 2, first: [span(1, 3)] } }, {}],
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

  describe('a jump', () => {
    test('has its level, and the acceleration of its own wall in its quarter turn', () => {
      const motion = checked({ jumps: { count: 1, largest: [jump(1, 'right')] } });
      // 1 s is in quarter 2 of 0.45 s.
      motion.right.accelerationPeak.set([1, 2, 3000, 4]);
      motion.left.accelerationPeak.fill(9000);
      const [found] = findingsOf(motion).findings;
      expect(found).toMatchObject({ atSeconds: 1, wall: 'right', acceleration: 3000, limit: -36 });
      expect(found?.value).toBeWithin(-6.0206, 1e-4);
      const [swapped] = findingsOf(motion, { swapChannels: true }).findings;
      expect(swapped).toMatchObject({ wall: 'right', acceleration: 9000 });
    });

    test('of both channels at one place is one, with the larger acceleration', () => {
      const largest = [jump(1, 'right', 0.6), jump(1, 'left', 0.3), jump(2, 'left', 0.1)];
      const motion = checked({ jumps: { count: 3, largest } });
      motion.left.accelerationPeak[2] = 7;
      const found = findingsOf(motion).findings;
      expect(found.map(({ atSeconds, wall }) => [atSeconds, wall])).toEqual([
        [1, 'both'],
        [2, 'left'],
      ]);
      expect(found[0]?.acceleration).toBe(7);
    });

    test('says how many there are only where not all are told', () => {
      const largest = [jump(1, 'left'), jump(1, 'right')];
      const [all] = findingsOf(checked({ jumps: { count: 2, largest } })).findings;
      expect(all).not.toHaveProperty('count');
      const some = checked({ jumps: { count: 8, largest }, identicalChannels: true });
      expect(findingsOf(some).findings.find(({ id }) => id === 'jump')?.count).toBe(4);
    });
  });

  describe('digital silence inside', () => {
    const silence = { count: 40, seconds: 55, first: [span(1, 1.5), span(2, 2.5), span(3, 3.2)] };

    test('is one finding, of all stretches together', () => {
      const [found] = findingsOf(checked({ silence })).findings;
      expect(found).toMatchObject({ atSeconds: 1, untilSeconds: 1.5, value: 55, count: 40 });
      expect(found?.spans).toEqual(silence.first);
    });

    test('of a side of tracks is what lies inside one of them, not between and at their ends', () => {
      const tracks = [
        { name: 'one', fromSeconds: 0, untilSeconds: 2 },
        { name: 'two', fromSeconds: 2.3, untilSeconds: 3.2 },
      ];
      const [found, ...others] = gapFindings(silence, tracks);
      expect(others).toEqual([]);
      expect(found).toMatchObject({ atSeconds: 1, value: 0.5, count: 1 });
      expect(gapFindings(silence, tracks.slice(1))).toEqual([]);
    });
  });

  test('the longest clip is told with the runs', () => {
    const program = { clippedRuns: 3, firstClipSeconds: 1.5, longestClip: span(2, 2.001) };
    expect(findingsOf(checked(program)).findings[0]?.longest).toEqual(span(2, 2.001));
  });
});
