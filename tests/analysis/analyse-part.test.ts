import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { analysePart, figuresOf, type PartMotion } from '../../src/analysis/analyse-part.js';
import type { FrameSource } from '../../src/analysis/frame-source.js';
import { joinFigures, joinParts } from '../../src/analysis/join-parts.js';
import { BINS_PER_QUARTER, type MotionSummary } from '../../src/analysis/motion.js';
import { rowsBetween, rowsOfSide, setRows } from '../../src/analysis/motion-rows.js';
import { type Part, partsOf } from '../../src/analysis/parts.js';
import { type OpenWav, withWav } from '../../src/analysis/wav-file.js';
import { wavFrames } from '../../src/analysis/wav-frames.js';
import { InputError } from '../../src/errors.js';
import { noise } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { wavBytes } from '../support/wav-writer.js';
import { bytesOf } from './figures-of.js';
import { settingsWith } from './summary-of.js';

const RATE = 44_100;
const SECONDS = 9;
const SETTINGS = settingsWith({ rpm: 45 });

/** A stereo file of floats, both channels one noise but for what is put into it. */
async function fileWith(
  faults: ReadonlyMap<number, number> = new Map(),
  sampleRate = RATE,
): Promise<string> {
  const words = noise(SECONDS * sampleRate, 3, 0.2);
  const both = Float64Array.from({ length: 2 * words.length }, (_, n) => words[n >> 1] ?? 0);
  for (const [frame, value] of faults) both[2 * frame + 1] = value;
  const path = join(await temporaryFolder(), 'side.wav');
  await writeFile(path, wavBytes({ encoding: 'float', bitDepth: 32, sampleRate, words: both }));
  return path;
}

function partsOfWav({ file }: OpenWav): readonly Part[] {
  return partsOf(file.format, file.frames, SETTINGS, 1.5);
}

async function summaryOfFile(path: string, backwards = false): Promise<MotionSummary> {
  return await withWav(path, async (wav) => {
    const parts = backwards ? [...partsOfWav(wav)].reverse() : partsOfWav(wav);
    const done: PartMotion[] = [];
    for (const part of parts) done.push(await analysePart(wavFrames(wav), SETTINGS, part));
    if (backwards) done.reverse();
    return joinParts(done, wav.file.format, wav.file.frames, SETTINGS);
  });
}

test('parts of one file, whether in turn, backwards or at once, give the same bytes', async () => {
  const path = await fileWith();
  const inTurn = bytesOf(await summaryOfFile(path));
  expect(bytesOf(await summaryOfFile(path, true)).equals(inTurn)).toBe(true);
  const atOnce = await withWav(path, async (wav) => {
    const parts = partsOfWav(wav).map((part) => analysePart(wavFrames(wav), SETTINGS, part));
    return joinParts(await Promise.all(parts), wav.file.format, wav.file.frames, SETTINGS);
  });
  expect(bytesOf(atOnce).equals(inTurn)).toBe(true);
});

test.each([
  ['by the pass itself', true],
  // As of a pass that has rows of its own: the plain one, or one at another rate.
  ['from rows of their own', false],
])('rows of a side that its parts fill in %s have the bytes of joined ones', async (_, inPlace) => {
  const path = await fileWith();
  const filled = await withWav(path, async (wav) => {
    const { format, frames } = wav.file;
    const parts = partsOfWav(wav);
    const rows = rowsOfSide(parts, SETTINGS);
    const measured = parts.map(async (part) => {
      const own = rowsBetween(rows, part.firstQuarter, part.endQuarter);
      const source = wavFrames(wav);
      const motion = inPlace
        ? await analysePart(source, SETTINGS, part, () => {}, own)
        : await analysePart(source, SETTINGS, part);
      expect(motion.bins.lift === own.bins.lift).toBe(inPlace);
      setRows(own, motion);
      return figuresOf(motion);
    });
    return joinFigures(await Promise.all(measured), rows, format, frames, SETTINGS);
  });
  expect(bytesOf(filled).equals(bytesOf(await summaryOfFile(path)))).toBe(true);
});

test('rows of a side lie in the silence that is planned around it, also when they are filled in', async () => {
  await withWav(await fileWith(), async (wav) => {
    const parts = partsOfWav(wav);
    const rows = rowsOfSide(parts, { silentTurns: 2 });
    for (const part of parts) {
      const own = rowsBetween(rows, part.firstQuarter, part.endQuarter);
      await analysePart(wavFrames(wav), SETTINGS, part, () => {}, own);
    }
    const silent = 8 * BINS_PER_QUARTER;
    expect(rows.silentQuarters).toBe(8);
    expect(rows.bins.outward.some((value) => value > 0)).toBe(true);
    for (const row of Object.values(rows.bins)) {
      const memory = new Float64Array(row.buffer);
      expect(memory.length).toBe(row.length + 2 * silent);
      expect(memory.subarray(silent, silent + row.length)).toEqual(row);
      const around = [...memory.subarray(0, silent), ...memory.subarray(silent + row.length)];
      expect(around.every((value) => value === 0)).toBe(true);
    }
  });
});

test('frames that are read into the pass itself and ones that are handed over give the same bytes', async () => {
  await withWav(await fileWith(), async (wav) => {
    const inPlace = wavFrames(wav);
    const handedOver: FrameSource = {
      ...inPlace,
      read: ({ firstFrame = 0, endFrame = inPlace.frames } = {}) =>
        inPlace.read({ firstFrame, endFrame, blockBytes: 50_000 }),
    };
    for (const part of partsOfWav(wav)) {
      const [one, other] = [inPlace, handedOver].map((source) =>
        analysePart(source, SETTINGS, part),
      );
      expect(await one).toEqual(await other);
    }
  });
});

test("all parts together tell of each of the file's frames once", async () => {
  await withWav(await fileWith(), async (wav) => {
    const parts = partsOfWav(wav);
    expect(parts.length).toBeGreaterThan(4);
    let total = 0;
    for (const part of parts) {
      let own = 0;
      await analysePart(wavFrames(wav), SETTINGS, part, (frames) => {
        expect(frames).toBeGreaterThanOrEqual(0);
        own += frames;
      });
      expect(own).toBe(part.endFrame - part.firstFrame);
      total += own;
    }
    expect(total).toBe(SECONDS * RATE);
  });
});

test("a part's rows are not copied when they cross threads", async () => {
  await withWav(await fileWith(), async (wav) => {
    const part = partsOfWav(wav)[2];
    if (part === undefined) throw new Error('no third part');
    const motion = await analysePart(wavFrames(wav), SETTINGS, part);
    const crossed = structuredClone(motion);
    expect(crossed).toEqual(motion);
    const rows = rowsOf(motion);
    // 7 rows a bin, 8 a quarter and wall, 6 of the low band.
    expect(rows.length).toBe(7 + 2 * 8 + 6);
    for (const row of rows) row.fill(3);
    expect(rowsOf(crossed)).toEqual(rows);
  });
});

function rowsOf({
  bins,
  left,
  right,
  lowBand,
}: PartMotion): (Float64Array | Int16Array | Uint32Array)[] {
  const wall = ({ edgeVelocityHistogram, accelerationHistogram, ...rows }: PartMotion['left']) => [
    ...Object.values(rows),
    ...Object.values(edgeVelocityHistogram),
    ...Object.values(accelerationHistogram),
  ];
  return [...Object.values(bins), ...wall(left), ...wall(right), ...Object.values(lowBand)];
}

test('a file at a rate of neither family is one part with all in it', async () => {
  await withWav(await fileWith(new Map(), 22_050), async (wav) => {
    const [part, ...others] = partsOfWav(wav);
    if (part === undefined || others.length > 0) throw new Error('not one part');
    const motion = await analysePart(wavFrames(wav), SETTINGS, part);
    const { file } = wav;
    const summary = joinParts([motion], file.format, file.frames, SETTINGS);
    expect(motion.part).toEqual(part);
    expect(summary.durationSeconds).toBe(SECONDS);
    expect(summary.quarterCount).toBe(4 * 7 + 4);
    expect(summary.program.identicalChannels).toBe(true);
  });
});

describe('a sample that is no number', () => {
  /** What each part says, or null. */
  async function refusals(faults: readonly number[]): Promise<(string | null)[]> {
    const path = await fileWith(new Map(faults.map((frame) => [frame, Number.NaN])));
    return await withWav(path, async (wav) =>
      Promise.all(
        partsOfWav(wav).map(async (part) => {
          try {
            await analysePart(wavFrames(wav), SETTINGS, part);
            return null;
          } catch (error) {
            if (!(error instanceof InputError)) throw error;
            expect(error.code).toBe('bad-sample');
            return /frame (\d+)/.exec(error.message)?.[1] ?? '';
          }
        }),
      ),
    );
  }

  const first = (said: readonly (string | null)[]) => said.find((frame) => frame !== null);

  test.each([0, 1, 66_149, 66_150, 66_151, 200_000, SECONDS * RATE - 1])(
    'in frame %i is told with its number in the file, by the part that holds it',
    async (frame) => {
      const said = await refusals([frame]);
      expect(said.filter((told) => told !== null).length).toBeGreaterThan(0);
      for (const told of said) if (told !== null) expect(told).toBe(String(frame));
      const holder = await withWav(await fileWith(), async (wav) =>
        partsOfWav(wav).findIndex((part) => frame >= part.firstFrame && frame < part.endFrame),
      );
      expect(said[holder]).toBe(String(frame));
    },
  );

  test('of several, the first part that refuses has the first of the file', async () => {
    for (const frames of [
      [250_000, 100_000, 390_000],
      [132_500, 133_000],
      [5, 6, 396_000],
    ]) {
      expect(first(await refusals(frames))).toBe(String(Math.min(...frames)));
    }
  });
});
