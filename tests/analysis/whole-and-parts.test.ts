// One pass over a whole program against passes over its parts: the same code from other places, so
// this says that no seam shows. What the pass itself says is held against others elsewhere.
import { describe, expect, test } from 'vitest';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import type { Settings } from '../../src/settings.js';
import { noise, rising, tones } from '../support/signals.js';
import { expectAlike } from './alike.js';
import { bytesOf, figuresOf } from './figures-of.js';
import { type CutProgram, joined, partMotion, partsOfProgram, summaryInParts } from './in-parts.js';
import { doubles, framesOf, settingsWith, summaryOfFrames } from './summary-of.js';

type Maker = (frames: number, rate: number) => Stereo;

const PROGRAMS: Readonly<Record<string, Maker>> = {
  // Partly common, without which the phase between the walls would mean nothing.
  noise: (frames) => {
    const [left, apart] = [noise(frames, 1, 0.3), noise(frames, 2, 0.3)];
    return { left, right: left.map((value, n) => (value + (apart[n] ?? 0)) / 2) };
  },
  tones: (frames, rate) => ({
    left: tones(
      [
        { hz: 41.3, amplitude: 0.4 },
        { hz: 3217, amplitude: 0.1 },
      ],
      frames,
      rate,
    ),
    right: tones(
      [
        { hz: 41.3, amplitude: 0.3, phase: 2 },
        { hz: 12_001, amplitude: 0.1 },
      ],
      frames,
      rate,
    ),
  }),
  // Falls with frequency, rises and falls in level, and is partly common: as music does.
  music: (frames, rate) => {
    const [shared, apart] = [noise(frames, 5, 1), noise(frames, 6, 1)];
    const beat = (n: number): number => 0.2 + 0.8 * Math.exp((-6 * (n % (0.53 * rate))) / rate);
    const wall = (sign: number): Float64Array => {
      let low = 0;
      return shared.map((value, n) => {
        low += 0.03 * (value + 0.6 * sign * (apart[n] ?? 0) - low);
        return beat(n) * (1.5 * low + 0.02 * value);
      });
    };
    return { left: wall(1), right: wall(-1) };
  },
  // Bursts of bass against each other, one every 0.41 s, so that seams meet them at any phase.
  bursts: (frames, rate) => {
    const wall = (delay: number): Float64Array =>
      tones([{ hz: 73, amplitude: 0.9 }], frames, rate).map((value, n) => {
        const at = (n / rate + delay) % 0.41;
        return value * rising(at, 0, 0.01) * rising(0.2 - at, 0, 0.02);
      });
    return { left: wall(0), right: wall(0.13) };
  },
  // A constant is what a filter that has not settled would show most.
  constant: (frames, rate) => {
    const tone = (phase: number): Float64Array =>
      tones([{ hz: 55, amplitude: 0.05, phase }], frames, rate);
    return {
      left: tone(0).map((value) => value + 0.5),
      right: tone(2).map((value) => value - 0.3),
    };
  },
};

interface Row {
  readonly program: string;
  readonly format: SampleFormat;
  readonly settings: Partial<Settings>;
  readonly seconds: number;
  readonly partSeconds: number;
}

const pcm = (bitDepth: 16 | 24, sampleRate: number, channels: 1 | 2 = 2): SampleFormat => ({
  encoding: 'pcm',
  bitDepth,
  channels,
  sampleRate,
});

const ROWS: readonly Row[] = [
  { program: 'noise', format: pcm(24, 96_000), seconds: 9.3, partSeconds: 1, settings: {} },
  { program: 'noise', format: pcm(16, 44_100), seconds: 8, partSeconds: 4, settings: { rpm: 45 } },
  { program: 'noise', format: pcm(24, 192_000), seconds: 5.7, partSeconds: 2, settings: {} },
  {
    program: 'tones',
    format: pcm(24, 48_000),
    seconds: 11.1,
    partSeconds: 2,
    settings: { rpm: 33.29, speedTolerance: 0.001 },
  },
  {
    program: 'tones',
    format: doubles(88_200),
    seconds: 7,
    partSeconds: 1.5,
    settings: { rpm: 45 },
  },
  {
    program: 'music',
    format: pcm(16, 44_100),
    seconds: 12.3,
    partSeconds: 2,
    settings: { rpm: 33.29, ellipticalHz: 150, ellipticalOrder: 2 },
  },
  {
    program: 'music',
    format: pcm(16, 48_000, 1),
    seconds: 9,
    partSeconds: 1,
    settings: { rpm: 78.26, speedTolerance: 0 },
  },
  {
    program: 'music',
    format: doubles(176_400),
    seconds: 8,
    partSeconds: 2,
    settings: { swapChannels: true, ellipticalHz: 10, ellipticalOrder: 1 },
  },
  { program: 'bursts', format: doubles(44_100), seconds: 12, partSeconds: 0.7, settings: {} },
  {
    program: 'bursts',
    format: pcm(24, 96_000),
    seconds: 20,
    partSeconds: 1,
    settings: { subsonicHz: 1, rpm: 45 },
  },
  {
    program: 'constant',
    format: doubles(44_100),
    seconds: 24,
    partSeconds: 2,
    settings: { subsonicHz: 2, ellipticalHz: 12, ellipticalOrder: 2 },
  },
  {
    program: 'constant',
    format: pcm(24, 48_000),
    seconds: 14,
    partSeconds: 2,
    settings: { subsonicHz: 10, speedFactor: 0.5 },
  },
];

function cutProgram({ program, format, seconds, settings, partSeconds }: Row): CutProgram {
  const frames = Math.round(seconds * format.sampleRate);
  const made = PROGRAMS[program]?.(frames, format.sampleRate);
  if (made === undefined) throw new Error(`no program ${program}`);
  return { bytes: framesOf(made, format), format, settings: settingsWith(settings), partSeconds };
}

/**
 * What two beginnings of the filters leave apart by 1e-11 may be rounded to neighbours among the f32
 * that the walls are kept in, 1.2e-7 apart, and an interpolated closing has some of both walls.
 */
const ROUNDED = 2000;

test.each(ROWS)(
  'no seam shows to 2e-6: $program, $format.sampleRate Hz, parts of $partSeconds s, $settings',
  async (row) => {
    const program = cutProgram(row);
    const parts = partsOfProgram(program);
    expect(parts.length).toBeGreaterThan(1);
    expect(parts.at(-1)?.readFrom, 'the last does not hear all').toBeGreaterThan(0);
    const whole = await summaryOfFrames(program.bytes, program.format, program.settings);
    expectAlike(figuresOf(await summaryInParts(program)), figuresOf(whole), ROUNDED);
  },
);

describe('whoever works on the parts', () => {
  const program = cutProgram({
    program: 'music',
    format: pcm(24, 44_100),
    seconds: 9,
    partSeconds: 1.5,
    settings: { rpm: 45 },
  });

  test('in another order and in other blocks they give the same bytes', async () => {
    const parts = partsOfProgram(program);
    const inOrder = bytesOf(await summaryInParts(program));
    const backwards = await Promise.all(
      [...parts].reverse().map((part, n) => partMotion(program, part, 1000 + 777 * n)),
    );
    expect(bytesOf(joined(program, backwards.reverse())).equals(inOrder)).toBe(true);
  });

  test('they are joined in their order or not at all', async () => {
    const motions = await Promise.all(
      partsOfProgram(program).map((part) => partMotion(program, part)),
    );
    expect(() => joined(program, [...motions].reverse())).toThrow(RangeError);
    expect(() => joined(program, motions.slice(1))).toThrow(RangeError);
    expect(() => joined(program, motions.slice(0, -1))).toThrow(RangeError);
    expect(() => joined(program, [])).toThrow(RangeError);
  });
});

describe('what is said of all the program', () => {
  const format = pcm(16, 44_100);
  const settings = settingsWith({ rpm: 45 });

  /** A quiet program with full scale around every seam, begun so many frames before it. */
  function clippedAtSeams(before: number, length: number): CutProgram {
    const quiet = { bytes: new Uint8Array(9 * 44_100 * 4), format, settings, partSeconds: 1.5 };
    const seams = partsOfProgram(quiet)
      .slice(1)
      .map((part) => part.firstFrame);
    const left = noise(9 * 44_100, 4, 0.1);
    for (const seam of seams) left.fill(1, seam - before, seam - before + length);
    return { ...quiet, bytes: framesOf({ left, right: left }, format) };
  }

  test.each([
    { before: 1, length: 3 },
    { before: 2, length: 3 },
    { before: 3, length: 3 },
    { before: 0, length: 3 },
    { before: 3, length: 9 },
    { before: 1, length: 2 },
  ])('a run of $length that begins $before before a seam counts once', async (run) => {
    const program = clippedAtSeams(run.before, run.length);
    const parts = partsOfProgram(program);
    const { clippedRuns, firstClipSeconds } = (await summaryInParts(program)).program;
    expect(parts.length).toBe(6);
    // Both channels have one at each of the seams.
    expect(clippedRuns).toBe(run.length < 3 ? 0 : 2 * (parts.length - 1));
    const first = ((parts[1]?.firstFrame ?? 0) - run.before) / 44_100;
    expect(firstClipSeconds).toBe(run.length < 3 ? null : first);
  });

  test('channels that differ in one frame of one part are not identical', async () => {
    const left = noise(9 * 44_100, 4, 0.1);
    const right = left.slice();
    const of = (bytes: Uint8Array) => ({ bytes, format, settings, partSeconds: 1.5 });
    const same = await summaryInParts(of(framesOf({ left, right }, format)));
    expect(same.program.identicalChannels).toBe(true);
    right[250_000] = 0.5;
    const differing = await summaryInParts(of(framesOf({ left, right }, format)));
    expect(differing.program.identicalChannels).toBe(false);
  });
});
