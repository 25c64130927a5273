import { beforeAll, describe, expect, test } from 'vitest';
import type { MotionSummary } from '../../src/analysis/motion.js';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { expectAlike } from '../analysis/alike.js';
import { figuresOf } from '../analysis/figures-of.js';
import { settingsWith } from '../analysis/summary-of.js';
import { withFolder } from '../support/run-furrow.js';
import { framesOfSide, layOut, summaryOfSide, writeWav } from '../support/sheet-side.js';
import { noise, tones } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';

/** One turn a second, so that a second is four quarters. */
const SETTINGS = settingsWith({ rpm: 60 });
const SECONDS = 4;
/** Half a second after the turn behind which the track begins: what that has set off is gone. */
const FIRST = 6;

const float = (sampleRate: number): SampleFormat => ({
  encoding: 'float',
  bitDepth: 32,
  channels: 2,
  sampleRate,
});

/** A sine in the left, one a little lower in the right; the same sound at any rate. */
function sound(hz: number, rate: number): Stereo {
  const frames = SECONDS * rate;
  return {
    left: tones([{ hz, amplitude: 0.1 }], frames, rate),
    right: tones([{ hz: 0.9 * hz, amplitude: 0.1, phase: 1 }], frames, rate),
  };
}

/** What the walls do in the quarters from one on, for as long as nothing begins or ends. */
function steady({ left, right, lateral, approach }: MotionSummary, from: number) {
  const quarters = (row: Float64Array) => row.slice(from + FIRST, from + 4 * SECONDS - 1);
  const decibels = (row: Float64Array) => quarters(row).map((square) => 10 * Math.log10(square));
  const bins = (row: Float64Array) => row.slice(16 * (from + FIRST), 16 * (from + 4 * SECONDS - 1));
  return {
    velocity: [left, right].flatMap((wall) => [...decibels(wall.velocityMeanSquare)]),
    acceleration: [left, right].flatMap((wall) => [...decibels(wall.accelerationMeanSquare)]),
    lateral: bins(lateral),
    approach: bins(approach),
  };
}

describe.each([
  { rates: [44_100, 96_000], program: 48_000 },
  { rates: [176_400, 48_000], program: 48_000 },
  { rates: [88_200, 44_100], program: 44_100 },
])('tracks at $rates Hz in one side', ({ rates, program }) => {
  describe.each([100, 1000, 10_000, 20_000])('of %i Hz', (hz) => {
    let both: MotionSummary;
    let alone: MotionSummary[];
    beforeAll(async () => {
      await withFolder(async (folder) => {
        const tracks = [];
        for (const rate of rates) {
          const file = `${rate}.wav`;
          await writeWav(folder, file, sound(hz, rate), float(rate));
          tracks.push({ file });
        }
        const side = await layOut(folder, { tracks }, SETTINGS);
        expect(side.format).toEqual({ ...float(program), bitDepth: 64 });
        expect(side.tracks.map(({ startFrame }) => startFrame)).toEqual([0, SECONDS * program]);
        both = await summaryOfSide(side, SETTINGS);
        alone = [];
        for (const track of tracks) {
          const own = await layOut(folder, { tracks: [track] }, SETTINGS);
          expect(own.isUntouched).toBe(true);
          alone.push(await summaryOfSide(own, SETTINGS));
        }
      });
    });

    test.each([0, 1])('move in track %i as in a side of their own', (track) => {
      const own = alone[track];
      if (own === undefined) throw new Error('not measured');
      const [together, apart] = [steady(both, track * 4 * SECONDS), steady(own, 0)];
      expect(apart.lateral.length).toBe(16 * (4 * SECONDS - 1 - FIRST));
      // Two ways within 0.01 dB of the formula each, for velocity, and 0.02 for acceleration.
      expect(together.velocity).toBeWithin(apart.velocity, 0.01);
      expect(together.acceleration).toBeWithin(apart.acceleration, 0.02);
      // The contract's 0.1 %, or 0.05 µm: phases too, since both walls are in these.
      expect(together.lateral).toBeWithin(apart.lateral, 1e-9, 0.002);
      expect(together.approach).toBeWithin(apart.approach, 1e-9, 0.002);
    });
  });
});

test('where a track at another rate lies in the program is where its samples are', async () => {
  const folder = await temporaryFolder();
  // An impulse half a second into a track that begins at 1.25 s.
  const rates = [44_100, 32_000, 96_000, 192_000, 88_200];
  for (const rate of rates) {
    const click = new Float64Array(rate);
    click[rate / 2] = 1;
    await writeWav(folder, 'click.wav', { left: click, right: click }, float(rate));
    const quiet = new Float64Array(48_000);
    await writeWav(folder, 'quiet.wav', { left: quiet, right: quiet }, float(48_000));
    const side = await layOut(folder, {
      tracks: [{ file: 'quiet.wav' }, { file: 'click.wav', gapSeconds: 0.25 }],
    });
    const bytes = await framesOfSide(side);
    const samples = new Float64Array(bytes.buffer, bytes.byteOffset, bytes.length / 8);
    const left = samples.filter((_, n) => n % 2 === 0);
    const peak = left.indexOf(Math.max(...left));
    expect(peak, `${rate} Hz`).toBe(1.75 * 48_000);
  }
});

test('a program in parts is the whole one, also where tracks are converted and filtered', async () => {
  const folder = await temporaryFolder();
  for (const [name, rate] of [
    ['a', 44_100],
    ['b', 96_000],
    ['c', 22_050],
  ] as const) {
    const program = { left: noise(5 * rate, rate, 0.2), right: noise(5 * rate, rate + 1, 0.2) };
    await writeWav(folder, `${name}.wav`, program, float(rate));
  }
  const side = await layOut(
    folder,
    {
      tracks: [
        { file: 'a.wav', ellipticalHz: 150, fadeOutSeconds: 1 },
        { file: 'b.wav', ellipticalHz: 40, gapSeconds: 0.3, trimDb: -2 },
        { file: 'c.wav' },
      ],
    },
    SETTINGS,
  );
  const [whole, parts] = [
    await summaryOfSide(side, SETTINGS, 100),
    await summaryOfSide(side, SETTINGS, 3),
  ];
  expectAlike(figuresOf(parts), figuresOf(whole), 100);
});
