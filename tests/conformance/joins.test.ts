// A side of several tracks against the one file that they are cut from: the joints must not show.
// The outside source is the uncut file itself; the tolerance of the land is 0.01 µm.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { MotionSummary } from '../../src/analysis/motion.js';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import { mapStereo, type Stereo } from '../../src/analysis/stereo.js';
import { forecastFile } from '../../src/forecast-side.js';
import { expectAlike } from '../analysis/alike.js';
import { bytesOf, figuresOf } from '../analysis/figures-of.js';
import { settingsWith } from '../analysis/summary-of.js';
import { aiffBytes } from '../support/aiff-writer.js';
import { flacBytes } from '../support/flac-writer.js';
import { withFolder } from '../support/run-furrow.js';
import { layOut, summaryOfSide, writeWav } from '../support/sheet-side.js';
import { noise, tones } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const RATE = 44_100;
const FRAMES = 7 * RATE;
const CUTS = [0, 100_003, 200_017, FRAMES];
const SETTINGS = settingsWith({ rpm: 45 });
const PCM16 = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;

const NOISE = noise(FRAMES, 11, 0.05);

/** Loud bass and treble that differ between the channels, rounded to 16 bits. */
const PROGRAM: Stereo = mapStereo(
  {
    left: tones(
      [
        { hz: 55, amplitude: 0.3 },
        { hz: 6100, amplitude: 0.05 },
      ],
      FRAMES,
      RATE,
    ).map((value, n) => value + (NOISE[n] ?? 0)),
    right: tones([{ hz: 55, amplitude: 0.3, phase: 0.7 }], FRAMES, RATE),
  },
  (channel) => channel.map((value) => Math.round(value * 2 ** 15) / 2 ** 15),
);

interface Piece {
  readonly format: SampleFormat;
  readonly track?: object;
}

/** The program cut in three, each piece in its format, as a side without gaps. */
async function joined(pieces: readonly Piece[], settings = SETTINGS) {
  const folder = await temporaryFolder();
  const tracks = [];
  for (const [index, { format, track }] of pieces.entries()) {
    const piece = mapStereo(PROGRAM, (channel) => channel.slice(CUTS[index], CUTS[index + 1]));
    const file = `${index}.wav`;
    await writeWav(folder, file, piece, format);
    tracks.push({ file, ...track });
  }
  return await layOut(folder, { tracks }, settings);
}

async function whole(): Promise<string> {
  return await writeWav(await temporaryFolder(), 'whole.wav', PROGRAM, PCM16);
}

const three = (format: SampleFormat, track: object = {}): Piece[] =>
  [0, 1, 2].map(() => ({ format, track }));

describe('a file cut in three and joined without gaps', () => {
  let uncut: MotionSummary;
  beforeAll(async () => {
    uncut = await withFolder(async (folder) =>
      summaryOfSide(await writeWav(folder, 'whole.wav', PROGRAM, PCM16), SETTINGS),
    );
  });

  test('moves as the file does, to the last bit', async () => {
    const side = await joined(three(PCM16));
    expect(side.isUntouched).toBe(true);
    expect(bytesOf(await summaryOfSide(side, SETTINGS))).toEqual(bytesOf(uncut));
  });

  test('does so too where the pieces are of different sample formats', async () => {
    const side = await joined([
      { format: PCM16 },
      { format: { ...PCM16, bitDepth: 24 } },
      { format: { ...PCM16, encoding: 'float', bitDepth: 32 } },
    ]);
    expect(side.isUntouched).toBe(false);
    expect(bytesOf(await summaryOfSide(side, SETTINGS))).toEqual(bytesOf(uncut));
  });

  test('does so too where the pieces are WAV, FLAC and AIFF files', async () => {
    const folder = await temporaryFolder();
    const piece = (index: number) =>
      mapStereo(PROGRAM, (channel) => channel.slice(CUTS[index], CUTS[index + 1]));
    const wordsOf = ({ left, right }: Stereo) =>
      Int16Array.from({ length: 2 * left.length }, (_, n) => {
        const channel = n % 2 === 0 ? left : right;
        return (channel[Math.floor(n / 2)] ?? 0) * 2 ** 15;
      });
    await writeWav(folder, '0.wav', piece(0), PCM16);
    await writeFile(join(folder, '1.flac'), flacBytes({ words: wordsOf(piece(1)) }));
    const sound = Buffer.from(wordsOf(piece(2)).buffer).swap16();
    await writeFile(join(folder, '2.aiff'), aiffBytes({ sound }));
    const tracks = ['0.wav', '1.flac', '2.aiff'].map((file) => ({ file }));
    const side = await layOut(folder, { tracks }, SETTINGS);
    expect(side.isUntouched).toBe(true);
    expect(side.tracks.map(({ file }) => file.container)).toEqual(['RIFF', 'FLAC', 'AIFF']);
    expect(bytesOf(await summaryOfSide(side, SETTINGS))).toEqual(bytesOf(uncut));
  });

  test.each([RATE, 2 * RATE])(
    'does not show its joints where the side has another rate: %i Hz, at 48 kHz',
    async (sampleRate) => {
      const folder = await temporaryFolder();
      const format = { ...PCM16, sampleRate };
      const files = ['0.wav', '1.wav', '2.wav'];
      for (const [index, file] of files.entries()) {
        const piece = mapStereo(PROGRAM, (channel) => channel.slice(CUTS[index], CUTS[index + 1]));
        await writeWav(folder, file, piece, format);
      }
      await writeWav(folder, 'whole.wav', PROGRAM, format);
      const silence = mapStereo(PROGRAM, () => new Float64Array(48_000));
      await writeWav(folder, 'silence.wav', silence, { ...PCM16, sampleRate: 48_000 });
      const tracks = (names: readonly string[]) =>
        [...names, 'silence.wav'].map((file) => ({ file }));
      const pieces = await layOut(folder, { tracks: tracks(files) }, SETTINGS);
      const plain = await layOut(folder, { tracks: tracks(['whole.wav']) }, SETTINGS);
      expect([pieces.format.sampleRate, pieces.frames]).toEqual([48_000, plain.frames]);
      const [cut, whole] = [
        await summaryOfSide(pieces, SETTINGS),
        await summaryOfSide(plain, SETTINGS),
      ];
      for (const row of ['approach', 'approachLoose', 'lift', 'sink', 'lateral'] as const) {
        expect(cut[row], row).toBeWithin(whole[row], 0.01e-6);
      }
      expect(cut.left.accelerationPeak).toBeWithin(whole.left.accelerationPeak, 1e-3, 1e-4);
    },
  );

  test('has the land of the file, bin by bin, within 0.01 µm', async () => {
    const file = await forecastFile(await whole(), SETTINGS, REQUEST);
    const side = await joined(three(PCM16));
    const forecast = await forecastFile(side, SETTINGS, REQUEST);
    expect(file.forecast.quarters.land.length).toBeGreaterThan(20);
    expect(forecast.forecast.quarters.land).toBeWithin(file.forecast.quarters.land, 0.01e-6);
    expect(forecast.forecast.findings).toEqual(file.forecast.findings);
  });
});

const REQUEST = { levelDb: 0, planner: 'turn-ahead' } as const;

describe('an elliptical filter', () => {
  const ELLIPTICAL = settingsWith({ rpm: 45, ellipticalHz: 150, ellipticalOrder: 2 });

  test('that all tracks have is that of a file, to the last bit', async () => {
    const uncut = await summaryOfSide(await whole(), ELLIPTICAL);
    const side = await joined(three(PCM16, { ellipticalHz: 150, ellipticalOrder: 2 }));
    expect(side.settings).toMatchObject({ ellipticalHz: 150, ellipticalOrder: 2 });
    expect(bytesOf(await summaryOfSide(side, side.settings))).toEqual(bytesOf(uncut));
  });

  // 150 Hz beside a corner that only a silent track behind them has, so that the filters have to
  // lie in the program. By the bilinear transform at 44.1 instead of 88.2 kHz the filter itself is
  // 2e-4 dB another above 5 kHz: that is not the joints'.
  test.each([
    { swapChannels: false, channelBalanceDb: 0 },
    { swapChannels: true, channelBalanceDb: 1.5 },
  ])('of one corner in neighbours does not show their joint, %o', async (wiring) => {
    const settings = settingsWith({ rpm: 45, ...wiring });
    const folder = await temporaryFolder();
    const silence = mapStereo(PROGRAM, () => new Float64Array(RATE));
    const files = ['0.wav', '1.wav', '2.wav'];
    for (const [index, file] of files.entries()) {
      const piece = mapStereo(PROGRAM, (channel) => channel.slice(CUTS[index], CUTS[index + 1]));
      await writeWav(folder, file, piece, PCM16);
    }
    await writeWav(folder, 'whole.wav', PROGRAM, PCM16);
    await writeWav(folder, 'silence.wav', silence, PCM16);
    const last = { file: 'silence.wav', ellipticalHz: 300 };
    const own = (file: string) => ({ file, ellipticalHz: 150, ellipticalOrder: 2 });
    const pieces = await layOut(folder, { tracks: [...files.map(own), last] }, settings);
    const uncut = await layOut(folder, { tracks: [own('whole.wav'), last] }, settings);
    expect(pieces.tracks.map(({ elliptical }) => elliptical?.corner)).toEqual([150, 150, 150, 300]);
    const [cut, plain] = [
      await summaryOfSide(pieces, settings),
      await summaryOfSide(uncut, settings),
    ];
    expectAlike(figuresOf(cut), figuresOf(plain), 10);
  });

  test.each([
    { order: 1, swapChannels: false, channelBalanceDb: 0 },
    { order: 2, swapChannels: false, channelBalanceDb: -3 },
    { order: 2, swapChannels: true, channelBalanceDb: 1.5 },
  ] as const)(
    'that lies in the program moves as the one of the analysis, within 0.01 µm, %o',
    async ({ order, ...wiring }) => {
      const settings = settingsWith({ rpm: 45, ...wiring });
      const folder = await temporaryFolder();
      await writeWav(folder, 'whole.wav', PROGRAM, PCM16);
      const silence = mapStereo(PROGRAM, () => new Float64Array(RATE));
      await writeWav(folder, 'silence.wav', silence, PCM16);
      const whole = { file: 'whole.wav', ellipticalHz: 150, ellipticalOrder: order };
      const mixed = await layOut(
        folder,
        { tracks: [whole, { file: 'silence.wav', ellipticalHz: null }] },
        settings,
      );
      const shared = await layOut(
        folder,
        { tracks: [whole, { ...whole, file: 'silence.wav' }] },
        settings,
      );
      const [own, common] = [
        await summaryOfSide(mixed, settings),
        await summaryOfSide(shared, shared.settings),
      ];
      const unfiltered = await summaryOfSide(
        await layOut(
          folder,
          { tracks: [{ file: 'whole.wav' }, { file: 'silence.wav' }] },
          settings,
        ),
        settings,
      );
      expect(Math.max(...unfiltered.lift)).toBeGreaterThan(Math.max(...common.lift) + 1e-6);
      for (const row of ['approach', 'approachLoose', 'lift', 'sink', 'lateral'] as const) {
        expect(own[row], row).toBeWithin(common[row], 0.01e-6);
      }
    },
  );
});
