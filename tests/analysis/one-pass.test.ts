// The pass over a file against plain-motion.ts, its readable definition: both by this project, so
// this says that the two are alike, not that they are right. Whether they are is asked elsewhere.
import { expect, test } from 'vitest';
import { convertSamples } from '../../src/analysis/convert-samples.js';
import { plainMotion } from '../../src/analysis/plain-motion.js';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import type { Settings } from '../../src/settings.js';
import { noise, rising, tones } from '../support/signals.js';
import { expectAlike } from './alike.js';
import { figuresOf } from './figures-of.js';
import { framesOf, settingsWith, summaryOfFrames } from './summary-of.js';

type Maker = (frames: number, rate: number) => Stereo;

const PROGRAMS: Readonly<Record<string, Maker>> = {
  noise: (frames) => ({ left: noise(frames, 1, 0.3), right: noise(frames, 2, 0.3) }),
  tones: (frames, rate) => ({
    left: tones(
      [
        { hz: 61, amplitude: 0.4 },
        { hz: 3217, amplitude: 0.2 },
      ],
      frames,
      rate,
    ),
    right: tones(
      [
        { hz: 61, amplitude: 0.3, phase: 2 },
        { hz: 15_001, amplitude: 0.1 },
      ],
      frames,
      rate,
    ),
  }),
  bursts: (frames, rate) => {
    const burst = (from: number, hz: number) =>
      tones([{ hz, amplitude: 0.9 }], frames, rate).map((value, n) => {
        const at = n / rate - from;
        return value * rising(at, 0, 0.01) * rising(0.06 - at, 0, 0.02);
      });
    return { left: burst(0.1, 90), right: burst(0.14, 210) };
  },
  // Peaks that hide behind three nearly level frames; the longer, the likelier.
  'bass and noise': (frames, rate) => {
    const bass = tones([{ hz: 71, amplitude: 0.4 }], frames, rate);
    const dense = noise(frames, 8, 0.2);
    const over = (sign: number) => bass.map((value, n) => value + sign * (dense[n] ?? 0));
    return { left: over(1), right: over(-1) };
  },
  // Runs at and over full scale: what is clipped counts, and a float may go on.
  hot: (frames) => {
    const left = noise(frames, 3, 1.6);
    return { left, right: left.map((value, n) => (n % 50 < 5 ? 1 : -value / 2)) };
  },
};

const pcm16 = { encoding: 'pcm', bitDepth: 16 } as const;
const pcm24 = { encoding: 'pcm', bitDepth: 24 } as const;
const float32 = { encoding: 'float', bitDepth: 32 } as const;
const float64 = { encoding: 'float', bitDepth: 64 } as const;
const at45 = { rpm: 45 };
/** Short turns keep the definition's time short; 78.26 makes none a whole number of frames. */
const at78 = { rpm: 78.26 };
/** No disc's, but with a wide tolerance the definition looks through every window frame by frame. */
const at300 = { rpm: 300 };

interface Row {
  readonly program: string;
  readonly format: SampleFormat;
  readonly settings: Partial<Settings>;
  readonly seconds: number;
}

const stereo = (words: Pick<SampleFormat, 'encoding' | 'bitDepth'>, sampleRate: number) =>
  ({ ...words, channels: 2, sampleRate }) as const;

const ROWS: readonly Row[] = [
  {
    program: 'bass and noise',
    format: stereo(pcm16, 44_100),
    seconds: 3,
    settings: { rpm: 90, ellipticalHz: 120, speedTolerance: 1e-6 },
  },
  {
    program: 'noise',
    format: stereo(pcm16, 44_100),
    seconds: 0.4,
    settings: { speedTolerance: 0 },
  },
  {
    program: 'noise',
    format: stereo(float64, 48_000),
    seconds: 0.9,
    settings: { ...at78, speedTolerance: 1e-6, lowBandHz: 2000 },
  },
  {
    program: 'tones',
    format: stereo(pcm24, 96_000),
    seconds: 0.9,
    settings: { ...at78, ellipticalHz: 150, ellipticalOrder: 1, lowBandHz: 30 },
  },
  {
    program: 'bursts',
    format: stereo(float32, 192_000),
    seconds: 0.3,
    settings: { ...at78, swapChannels: true, channelBalanceDb: 1.5 },
  },
  {
    program: 'noise',
    format: { ...pcm24, channels: 1, sampleRate: 44_100 },
    seconds: 0.3,
    settings: { ...at45, polarity: -1, lowBandHz: 1490 },
  },
  {
    program: 'bursts',
    format: stereo(float32, 44_100),
    seconds: 0.3,
    settings: { rpm: 33.29, speedTolerance: 0.001 },
  },
  {
    program: 'hot',
    format: stereo(float32, 88_200),
    seconds: 0.2,
    settings: { ...at78, ellipticalHz: 300, ellipticalOrder: 2 },
  },
  {
    program: 'bursts',
    format: stereo(pcm16, 48_000),
    seconds: 0.5,
    settings: { ...at300, speedTolerance: 0.01 },
  },
  {
    program: 'hot',
    format: stereo(pcm16, 44_100),
    seconds: 0.3,
    settings: { ...at78, speedFactor: 0.5, subsonicHz: 15, ellipticalHz: 100, ellipticalOrder: 2 },
  },
  // Its true peak lies before its first frame.
  {
    program: 'hot',
    format: stereo(float32, 44_100),
    seconds: 2 / 44_100,
    settings: { ...at78, referenceDbfs: -30 },
  },
];

test.each(ROWS)(
  'the pass is its definition to 1e-9: $program, $format.sampleRate Hz, $settings',
  async ({ program, format, seconds, settings: changes }) => {
    const settings = settingsWith(changes);
    const frames = Math.round(seconds * format.sampleRate);
    const made = PROGRAMS[program]?.(frames, format.sampleRate);
    if (made === undefined) throw new Error(`no program ${program}`);
    const bytes = framesOf(made, format);
    const passed = figuresOf(await summaryOfFrames(bytes, format, settings));
    const plain = figuresOf(plainMotion(decoded(bytes, format, frames), format, settings));
    expect([...passed.keys()]).toEqual([...plain.keys()]);
    expectAlike(passed, plain);
  },
);

function decoded(bytes: Uint8Array, format: SampleFormat, frames: number): Stereo {
  const both = new Float64Array(2 * frames);
  convertSamples(bytes, format, both);
  const channel = (of: 0 | 1) =>
    Float64Array.from({ length: frames }, (_, n) => both[2 * n + of] ?? 0);
  return { left: channel(0), right: channel(1) };
}
