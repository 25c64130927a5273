import { describe, expect, test } from 'vitest';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import type { Stereo } from '../../src/analysis/stereo.js';
import { InputError } from '../../src/errors.js';
import { framesOf, settingsWith } from '../analysis/summary-of.js';
import { framesOfSide, layOut, summaryOfSide, writeWav } from '../support/sheet-side.js';
import { inBoth, noise, scaled, tones } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const RATE = 8000;
const PCM = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;

const stereoNoise = (frames: number, seed = 1, amplitude = 0.5): Stereo => ({
  left: noise(frames, seed, amplitude),
  right: noise(frames, seed + 100, amplitude),
});

/** The samples of a program of 64-bit floats, a row a channel. */
function rowsOf(bytes: Buffer, channels = 2): Float64Array[] {
  const all = new Float64Array(bytes.length / 8);
  for (let n = 0; n < all.length; n++) all[n] = bytes.readDoubleLE(8 * n);
  return Array.from({ length: channels }, (_, channel) =>
    all.filter((_value, n) => n % channels === channel),
  );
}

describe('frames that are only put one behind the other', () => {
  test.each([
    { bitDepth: 8, silence: 128 },
    { bitDepth: 16, silence: 0 },
    { bitDepth: 24, silence: 0 },
    { bitDepth: 32, silence: 0 },
  ] as const)('are the files’ own bytes, the gap of silence, $bitDepth bits', async (row) => {
    const format: SampleFormat = { ...PCM, bitDepth: row.bitDepth };
    const folder = await temporaryFolder();
    const [one, two] = [stereoNoise(1000, 1), stereoNoise(777, 2)];
    await writeWav(folder, 'one.wav', one, format);
    await writeWav(folder, 'two.wav', two, format);
    const side = await layOut(folder, {
      tracks: [
        { file: 'one.wav', fromSample: 100, untilSample: 900, gapSeconds: 0.01 },
        { file: 'two.wav', gapSeconds: 0.5 },
        { file: 'one.wav' },
      ],
    });
    const size = (2 * row.bitDepth) / 8;
    const gap = (frames: number) => Buffer.alloc(frames * size, row.silence);
    const [first, second] = [framesOf(one, format), framesOf(two, format)];
    expect(await framesOfSide(side)).toEqual(
      Buffer.concat([gap(80), first.subarray(100 * size, 900 * size), gap(4000), second, first]),
    );
  });

  test('are the same in blocks of any size', async () => {
    const folder = await temporaryFolder();
    await writeWav(folder, 'one.wav', stereoNoise(1000), PCM);
    const tracks = [{ file: 'one.wav' }, { file: 'one.wav', gapSeconds: 0.1 }];
    const [plain, mixed] = [
      await layOut(folder, { tracks }),
      await layOut(folder, { tracks: tracks.map((track) => ({ ...track, trimDb: -1 })) }),
    ];
    for (const side of [plain, mixed]) {
      const whole = await framesOfSide(side);
      for (const bytes of [1, 100, 3001]) expect(await framesOfSide(side, bytes)).toEqual(whole);
    }
  });
});

describe('a trim', () => {
  test('is a factor on the samples, and mono tracks beside stereo ones are doubled', async () => {
    const folder = await temporaryFolder();
    const program = stereoNoise(500);
    const float = { ...PCM, encoding: 'float', bitDepth: 64 } as const;
    await writeWav(folder, 'stereo.wav', program, float);
    await writeWav(folder, 'mono.wav', program, { ...float, channels: 1 });
    const side = await layOut(folder, {
      tracks: [{ file: 'stereo.wav', trimDb: -6 }, { file: 'mono.wav' }],
    });
    const [left = [], right = []] = rowsOf(await framesOfSide(side));
    const factor = 10 ** (-6 / 20);
    expect(left).toBeWithin([...scaled(program.left, factor), ...program.left], 1e-15);
    expect(right).toBeWithin([...scaled(program.right, factor), ...program.left], 1e-15);
  });

  test('of a side of mono files leaves one channel, which loudness counts once', async () => {
    const folder = await temporaryFolder();
    await writeWav(folder, 'mono.wav', stereoNoise(500), { ...PCM, channels: 1 });
    const side = await layOut(folder, { tracks: [{ file: 'mono.wav', trimDb: 1 }] });
    expect(side.format).toMatchObject({ encoding: 'float', bitDepth: 64, channels: 1 });
    expect(rowsOf(await framesOfSide(side), 1)[0]).toHaveLength(500);
  });
});

test('fades are raised cosines, from the first sample and to the last', async () => {
  const folder = await temporaryFolder();
  const ones = inBoth(new Float64Array(801).fill(0.5));
  await writeWav(folder, 'ones.wav', ones, { ...PCM, encoding: 'float', bitDepth: 32 });
  const side = await layOut(folder, {
    tracks: [{ file: 'ones.wav', fadeInSeconds: 0.05, fadeOutSeconds: 0.025 }],
  });
  const [left = new Float64Array(0)] = rowsOf(await framesOfSide(side));
  // 400 and 200 frames; by hand: nothing, ½(1 − cos 45°), half, all.
  expect([left[0], left[100], left[200], left[400], left[600]]).toBeWithin(
    [0, 0.5 * 0.1464466094, 0.25, 0.5, 0.5],
    1e-10,
  );
  expect([left[700], left[750], left[800]]).toBeWithin([0.25, 0.5 * 0.1464466094, 0], 1e-10);
});

describe('what is said of the files’ own samples', () => {
  const rate = 96_000;
  const SETTINGS = settingsWith({ rpm: 60 });

  /** Quiet but for three runs at full scale, in the first and in the fifth second. */
  function clipping(): Stereo {
    const left = tones([{ hz: 100, amplitude: 0.1 }], 6 * rate, rate);
    for (const at of [5000, 5100, 5 * rate]) left.fill(1, at, at + 4);
    return { left, right: tones([{ hz: 100, amplitude: 0.1 }], 6 * rate, rate) };
  }

  test.each([
    { side: 'trimmed', track: { trimDb: -4 }, other: rate },
    { side: 'at another rate', track: {}, other: 44_100 },
  ])('runs at full scale are found in a track that is $side', async ({ track, other }) => {
    const folder = await temporaryFolder();
    await writeWav(folder, 'clipped.wav', clipping(), { ...PCM, bitDepth: 24, sampleRate: rate });
    const quiet = inBoth(new Float64Array(other));
    await writeWav(folder, 'quiet.wav', quiet, { ...PCM, bitDepth: 24, sampleRate: other });
    const side = await layOut(
      folder,
      { tracks: [{ file: 'quiet.wav' }, { file: 'clipped.wav', gapSeconds: 0.5, ...track }] },
      SETTINGS,
    );
    expect(side.isUntouched).toBe(false);
    for (const partSeconds of [100, 2]) {
      const { program } = await summaryOfSide(side, SETTINGS, partSeconds);
      expect(program.clippedRuns).toBe(3);
      expect(program.firstClipSeconds).toBeWithin(1.5 + 5000 / rate, 1 / 44_100);
    }
  });

  test('what lies above the band is as loud as it is in the file', async () => {
    const folder = await temporaryFolder();
    const frames = 4 * rate;
    const high = inBoth(tones([{ hz: 34_000, amplitude: 0.1 }], frames, rate));
    await writeWav(folder, 'high.wav', high, { ...PCM, bitDepth: 24, sampleRate: rate });
    const quiet = inBoth(new Float64Array(4 * 44_100));
    await writeWav(folder, 'quiet.wav', quiet, { ...PCM, bitDepth: 24, sampleRate: 44_100 });
    const tracks = [{ file: 'high.wav' }, { file: 'quiet.wav' }];
    const side = await layOut(folder, { tracks }, SETTINGS);
    const alone = await layOut(folder, { tracks: tracks.slice(0, 1) }, SETTINGS);
    const own = (await summaryOfSide(alone, SETTINGS)).program.ultrasonicMeanSquare;
    // By hand: a sine's mean square, which the side's other half has none of.
    expect(own).toBeWithin(0.005, 0, 0.01);
    for (const partSeconds of [100, 2]) {
      const { program } = await summaryOfSide(side, SETTINGS, partSeconds);
      expect(program.ultrasonicMeanSquare).toBeWithin(own / 2, 0, 0.001);
    }
  });
});

describe('a file that is not fit', () => {
  const float = { ...PCM, encoding: 'float', bitDepth: 32, sampleRate: 44_100 } as const;

  test.each([{}, { trimDb: -1 }])('is named with its own frame, track %o', async (track) => {
    const folder = await temporaryFolder();
    const good = stereoNoise(30_000);
    const bad = stereoNoise(30_000);
    bad.left[12_345] = Number.NaN;
    await writeWav(folder, 'good.wav', good, float);
    const path = await writeWav(folder, 'bad.wav', bad, float);
    const side = await layOut(folder, {
      tracks: [{ file: 'good.wav' }, { file: 'bad.wav', gapSeconds: 1, fromSample: 10, ...track }],
    });
    const failed = await summaryOfSide(side, settingsWith()).catch((error: unknown) => error);
    expect(failed).toBeInstanceOf(InputError);
    expect(failed).toMatchObject({ path, code: 'bad-sample' });
    expect(String(failed)).toContain('(frame 12345)');
  });

  test('because it became another one meanwhile is not read', async () => {
    const folder = await temporaryFolder();
    const path = await writeWav(folder, 'a.wav', stereoNoise(1000), float);
    const side = await layOut(folder, { tracks: [{ file: 'a.wav' }] });
    await framesOfSide(side);
    await writeWav(folder, 'a.wav', stereoNoise(1001), float);
    await expect(framesOfSide(side)).rejects.toMatchObject({ code: 'changed-while-read', path });
  });
});
