// What a file's samples say, on hand-made files.
import { describe, expect, test } from 'vitest';
import type { ProgramChecks } from '../../src/analysis/motion.js';
import { sumProgram } from '../../src/analysis/program-checks.js';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { faded, inBoth, noise, scaled, tones } from '../support/signals.js';
import { doubles, framesOf, settingsWith, summaryOfFrames } from './summary-of.js';

const RATE = 44_100;
const FRAMES = 8820;

async function checksOf(
  program: Stereo,
  format: SampleFormat = doubles(RATE),
): Promise<ProgramChecks> {
  const bytes = framesOf(program, format);
  return (await summaryOfFrames(bytes, format, settingsWith())).program;
}

const silence = new Float64Array(FRAMES);
const with_ = (values: readonly number[], at: number): Float64Array => {
  const signal = new Float64Array(FRAMES);
  signal.set(values, at);
  return signal;
};

test('a mean of a hundredth is told per channel, and its square', async () => {
  const program = { left: silence.map(() => 0.01), right: silence.map(() => -0.02) };
  const { mean, meanSquare, correlation } = await checksOf(program);
  expect(mean).toBeWithin([0.01, -0.02], 1e-12);
  expect(meanSquare).toBeWithin([1e-4, 4e-4], 1e-12);
  expect(correlation).toBeWithin(-1, 1e-12);
});

test('a sine has half its squared peak as mean square, and no mean', async () => {
  // 100 Hz: whole periods in 0.2 s.
  const left = tones([{ hz: 100, amplitude: 0.5 }], FRAMES, RATE);
  const { mean, meanSquare, samplePeak } = await checksOf({ left, right: silence });
  expect(mean).toBeWithin([0, 0], 1e-12);
  expect(meanSquare).toBeWithin([0.125, 0], 1e-9);
  expect(samplePeak).toBeWithin([0.5, 0], 1e-4);
});

describe('clipping', () => {
  test('three samples at full scale are a run, two are none', async () => {
    const two = await checksOf({ left: with_([1, 1, 0, -1, -1], 100), right: silence });
    expect(two.clippedRuns).toBe(0);
    expect(two.firstClipSeconds).toBe(null);
    const three = await checksOf({ left: with_([1, 1, 1], 441), right: silence });
    expect(three.clippedRuns).toBe(1);
    expect(three.firstClipSeconds).toBeWithin(0.01, 1e-12);
  });

  test('a longer run is one, another after it a second, of either channel and sign', async () => {
    const left = with_([1, 1.2, -1, 1, 1, 1, 0, -1, -1, -1], 882);
    const { clippedRuns, firstClipSeconds } = await checksOf({
      left,
      right: with_([1, 1, 1], 441),
    });
    expect(clippedRuns).toBe(3);
    expect(firstClipSeconds).toBeWithin(0.01, 1e-12);
  });

  test('the longest of them is told with its ends, the first of equals', async () => {
    const left = with_([1, 1, 1, 0, 0, -1, -1, -1, -1, -1, 0, 1, 1, 1, 1, 1], 441);
    const { longestClip } = await checksOf({ left, right: with_([1, 1, 1], 200) });
    expect(longestClip?.fromSeconds).toBeWithin(446 / RATE, 1e-12);
    expect(longestClip?.untilSeconds).toBeWithin(451 / RATE, 1e-12);
  });

  // 100 Hz at 1.5 stays over full scale for some 117 frames at each top: over-peak, not clipped.
  test('a float sine that goes over full scale and is whole is not clipped', async () => {
    const over = tones([{ hz: 100, amplitude: 1.5, phase: 0.3 }], FRAMES, RATE);
    expect((await checksOf({ left: over, right: over })).clippedRuns).toBe(0);
  });

  test('a float sine cut off at 1.2 is clipped once a top', async () => {
    const cut = tones([{ hz: 100, amplitude: 1.5 }], FRAMES, RATE).map((value) =>
      Math.max(-1.2, Math.min(1.2, value)),
    );
    // 0.2 s of 100 Hz have 40 tops.
    expect((await checksOf({ left: cut, right: silence })).clippedRuns).toBe(40);
  });

  test('a float plateau changes over into another one as a run of its own', async () => {
    const left = with_([1, 1.1, 1.1, 1.1, -1.1, -1.1, -1.1], 440);
    const { clippedRuns, firstClipSeconds } = await checksOf({ left, right: silence });
    expect(clippedRuns).toBe(2);
    expect(firstClipSeconds).toBeWithin(0.01, 1e-12);
  });

  // Samples of five values, one in five of them ±1.25 or ±1: runs of all lengths, signs and mixtures.
  const steps = (seed: number) =>
    noise(FRAMES, seed, 1).map(
      (value) => [-1.25, -1, 0.5, 1, 1.25][Math.floor(2.5 * value + 2.5)] ?? 0,
    );

  test.each([
    ['float', 32, 88_200],
    ['float', 64, 44_100],
    ['float', 32, 22_050],
    ['pcm', 16, 44_100],
    ['pcm', 24, 96_000],
  ] as const)('the pass counts runs as their definition does: %s %i, %i Hz', async (...row) => {
    const [encoding, bitDepth, sampleRate] = row;
    const format = { encoding, bitDepth, channels: 2, sampleRate } as const;
    const program = { left: steps(31), right: steps(32) };
    const plain = sumProgram(program, format);
    const { clippedRuns, firstClipSeconds, longestClip } = await checksOf(program, format);
    const { firstFrame, frames } = plain.longestClip;
    expect(frames).toBeGreaterThan(3);
    expect(longestClip).toEqual({
      fromSeconds: firstFrame / sampleRate,
      untilSeconds: (firstFrame + frames) / sampleRate,
    });
    expect(plain.clippedRuns).toBeGreaterThan(100);
    expect(clippedRuns).toBe(plain.clippedRuns);
    expect(firstClipSeconds).toBe(plain.firstClipFrame / sampleRate);
  });

  test('runs in the two channels do not add up to one', async () => {
    const program = { left: with_([1, 1], 100), right: with_([1, 1], 102) };
    expect((await checksOf(program)).clippedRuns).toBe(0);
  });

  test.each([16, 24] as const)('the highest code of %i bits is full scale', async (bitDepth) => {
    const format = { encoding: 'pcm', bitDepth, channels: 2, sampleRate: RATE } as const;
    // What is over full scale is written as the highest code, 1 − 2^(1−bits).
    const { clippedRuns, samplePeak } = await checksOf(
      { left: with_([2, 2, 2], 9), right: silence },
      format,
    );
    expect(clippedRuns).toBe(1);
    expect(samplePeak[0]).toBe(1 - 2 ** (1 - bitDepth));
  });
});

describe('the channels', () => {
  const one = noise(FRAMES, 21, 0.5);

  test('alike are identical and correlate by 1', async () => {
    const { correlation, identicalChannels } = await checksOf(inBoth(one));
    expect(correlation).toBeWithin(1, 1e-12);
    expect(identicalChannels).toBe(true);
  });

  test('against each other correlate by −1 and are not identical', async () => {
    const { correlation, identicalChannels } = await checksOf({
      left: one,
      right: scaled(one, -0.3),
    });
    expect(correlation).toBeWithin(-1, 1e-12);
    expect(identicalChannels).toBe(false);
  });

  test('are not identical if a single frame differs', async () => {
    const right = one.map((value, n) => (n === 5000 ? value + 2 ** -20 : value));
    expect((await checksOf({ left: one, right })).identicalChannels).toBe(false);
  });

  test('of independent noise correlate by nothing', async () => {
    const { correlation } = await checksOf({ left: one, right: noise(FRAMES, 22, 0.5) });
    // 4/√8820: four standard deviations.
    expect(correlation).toBeWithin(0, 0.043);
  });

  test('are one in a mono file, which is never called two identical ones', async () => {
    const format = { ...doubles(RATE), channels: 1 } as const;
    const { identicalChannels, meanSquare } = await checksOf(inBoth(one), format);
    expect(identicalChannels).toBe(false);
    expect(meanSquare[1]).toBe(meanSquare[0]);
  });
});

test('silence has no loudness, no correlation and no peak', async () => {
  const checks = await checksOf(inBoth(silence));
  expect(checks).toEqual({
    mean: [0, 0],
    meanSquare: [0, 0],
    samplePeak: [0, 0],
    truePeak: [0, 0],
    loudnessLufs: null,
    clippedRuns: 0,
    firstClipSeconds: null,
    longestClip: null,
    correlation: 0,
    identicalChannels: true,
    ultrasonicMeanSquare: 0,
    silence: { count: 0, seconds: 0, first: [] },
    jumps: { count: 0, largest: [] },
  });
});

// Source: ITU-R BS.1770-4, annex 2: a sine at a quarter of the rate whose samples all lie 45° off
// its peaks has a sample peak 3.01 dB under its true peak.
test('a true peak between samples is found', async () => {
  const left = faded(
    tones([{ hz: RATE / 4, amplitude: 0.5, phase: Math.PI / 4 }], FRAMES, RATE),
    2000,
  );
  const { samplePeak, truePeak } = await checksOf({ left, right: silence });
  expect(samplePeak[0]).toBeWithin(0.5 / Math.SQRT2, 1e-9);
  expect(20 * Math.log10(truePeak[0] / 0.5)).toBeWithin(0, 0.02);
});

test('a frame that is no number is pointed at', async () => {
  const left = with_([Number.NaN], 1234);
  await expect(checksOf({ left, right: silence })).rejects.toThrow('frame 1234 is unfit');
});
