/**
 * The reel beside its own text, read back by sox, which shares no code with furrow: a passage has
 * the samples of the program at the positions that the text states, and nothing else sounds.
 */
import { spawnSync } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { SampleFormat } from '../../src/analysis/sample-format.js';
import { inventedProgram, louderBetween, RATE } from '../support/invented-program.js';
import { needProgram } from '../support/outside-program.js';
import { readCues, readForm } from '../support/riff-chunks.js';
import { runInProcess } from '../support/run-in-process.js';
import { framesOfSide, layOut, writeWav } from '../support/sheet-side.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const SECONDS = 40;
const QUIET = ['--no-discovery', '--quiet'];
const PROGRAM = louderBetween(inventedProgram(SECONDS, 5), 4, 12, 15);

/** What the text says of a passage's frames, in the side and in the reel. */
interface Stated {
  readonly side: readonly [number, number];
  readonly reel: readonly [number, number];
}

async function statedIn(path: string): Promise<Stated[]> {
  const text = (await readFile(path, 'utf8')).replaceAll(/\s+/g, ' ');
  const pairs = [...text.matchAll(/frames (\d+) to (\d+)/g)].map(
    ([, from, until]) => [Number(from), Number(until)] as const,
  );
  return pairs.flatMap((side, at) => {
    const reel = pairs[at + 1];
    return at % 2 === 0 && reel !== undefined ? [{ side, reel }] : [];
  });
}

/** Frames of a file as sox reads them: signed words of 32 bits. */
function soxFrames(path: string, [from, until]: readonly [number, number]): Buffer {
  const words = ['-t', 'raw', '-e', 'signed', '-b', '32', '-'];
  const trim = ['trim', `${from}s`, `${until - from}s`];
  const ran = spawnSync('sox', ['-D', path, ...words, ...trim], { maxBuffer: 2 ** 28 });
  expect(ran.status).toBe(0);
  return ran.stdout;
}

describe('a reel read back by sox', () => {
  test.for([
    { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: RATE },
    { encoding: 'pcm', bitDepth: 16, channels: 1, sampleRate: RATE },
    { encoding: 'pcm', bitDepth: 8, channels: 2, sampleRate: RATE },
    { encoding: 'float', bitDepth: 32, channels: 2, sampleRate: RATE },
  ] satisfies SampleFormat[])(
    'has the samples of a file of $bitDepth bit $encoding, $channels channels, at the stated frames',
    async (format, context) => {
      needProgram('sox', context);
      const folder = await temporaryFolder();
      const side = await writeWav(folder, 'side.wav', PROGRAM, format);
      const reel = join(folder, 'reel.wav');
      const ran = await runInProcess(['forecast', ...QUIET, '--reel', reel, side]);
      expect([ran.exitCode, ran.stderr]).toEqual([0, '']);
      const stated = await statedIn(join(folder, 'reel.txt'));
      expect(stated.length).toBe(5);
      let before = 0;
      for (const { side: inSide, reel: inReel } of stated) {
        const found = soxFrames(reel, inReel);
        expect(found.equals(soxFrames(side, inSide))).toBe(true);
        expect(found.length).toBe(4 * format.channels * (inSide[1] - inSide[0]));
        expect(found.some((byte) => byte !== 0)).toBe(true);
        // One turn of silence at least: 1.8 s.
        expect(inReel[0] - before).toBeGreaterThanOrEqual(1.8 * RATE);
        expect(soxFrames(reel, [before, inReel[0]]).every((byte) => byte === 0)).toBe(true);
        before = inReel[1];
      }
      const rest = soxFrames(reel, [before, before + 1000 * RATE]);
      expect(rest.length).toBe(4 * format.channels * Math.ceil(1.8 * RATE));
      expect(rest.every((byte) => byte === 0)).toBe(true);
    },
  );

  test('has the mixed stream of a sheet in 32-bit float', async (context) => {
    needProgram('sox', context);
    const folder = await temporaryFolder();
    const pcm = { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: RATE } as const;
    await writeWav(folder, 'one.wav', inventedProgram(10, 2), pcm);
    await writeWav(folder, 'two.wav', inventedProgram(10, 3), { ...pcm, sampleRate: 48_000 });
    const tracks = [
      { file: 'one.wav', trimDb: -2 },
      { file: 'two.wav', gapSeconds: 2 },
    ];
    const sheet = { format: 'furrow.sheet/1', sides: [{ name: 'A', tracks }] };
    await writeFile(join(folder, 'sheet.json'), JSON.stringify(sheet));
    const reel = join(folder, 'reel.wav');
    const ran = await runInProcess(['side', ...QUIET, '--reel', reel, join(folder, 'sheet.json')]);
    expect([ran.exitCode, ran.stderr]).toEqual([0, '']);
    const whole = await framesOfSide(await layOut(folder, { tracks }));
    const stated = await statedIn(join(folder, 'reel.txt'));
    expect(stated.length).toBeGreaterThan(0);
    for (const { side, reel: inReel } of stated) {
      const found = soxFrames(reel, inReel);
      const count = 2 * (side[1] - side[0]);
      const read = Float64Array.from(
        { length: count },
        (_, at) => found.readInt32LE(4 * at) / 2 ** 31,
      );
      const streamed = Float64Array.from({ length: count }, (_, at) =>
        whole.readDoubleLE(8 * (2 * side[0] + at)),
      );
      // sox holds samples as integers of 32 bits; a float of 32 has 24 of its own.
      expect(read).toBeWithin(streamed, 2 ** -31, 2 ** -24);
      expect(found.length).toBe(8 * (side[1] - side[0]));
    }
  });

  test('names each passage by a cue point that lasts as long as it', async () => {
    const folder = await temporaryFolder();
    const pcm = { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: RATE } as const;
    const side = await writeWav(folder, 'side.wav', PROGRAM, pcm);
    const reel = join(folder, 'reel.wav');
    await runInProcess(['forecast', ...QUIET, '--reel', reel, side]);
    const cues = readCues(readForm(await readFile(reel)));
    const stated = await statedIn(join(folder, 'reel.txt'));
    expect(cues.map(({ frame, length }) => [frame, frame + length])).toEqual(
      stated.map((each) => [...each.reel]),
    );
    expect(cues.map(({ label }) => label?.slice(0, 2))).toEqual(['1 ', '2 ', '3 ', '4 ', '5 ']);
  });
});

describe('furrow --reel', () => {
  test('writes a reel of each of several sides, and none of silence', async () => {
    const folder = await temporaryFolder();
    const pcm = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;
    const silent = { left: new Float64Array(4 * RATE), right: new Float64Array(4 * RATE) };
    const paths = [
      await writeWav(folder, 'a.wav', inventedProgram(6, 1), pcm),
      await writeWav(folder, 'b.wav', silent, pcm),
    ];
    const reel = join(folder, 'tests.wav');
    const ran = await runInProcess(['forecast', '--no-discovery', '--reel', reel, ...paths]);
    expect(ran.exitCode).toBe(0);
    expect(ran.stderr).toContain('b.wav: nothing in it moves the groove; --reel left out');
    expect((await readFile(join(folder, 'tests.a.wav'))).length).toBeGreaterThan(1000);
    await expect(readFile(join(folder, 'tests.b.wav'))).rejects.toThrow('ENOENT');
  });

  test('never writes over the sound it reads', async () => {
    const folder = await temporaryFolder();
    const pcm = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;
    const side = await writeWav(folder, 'a.wav', inventedProgram(4, 1), pcm);
    const ran = await runInProcess(['forecast', ...QUIET, '--reel', side, side]);
    expect(ran.exitCode).toBe(2);
    expect(ran.stderr).toContain('--reel');
  });

  test('says that a saved motion has no sound to cut', async () => {
    const folder = await temporaryFolder();
    const pcm = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;
    const side = await writeWav(folder, 'a.wav', inventedProgram(4, 1), pcm);
    await runInProcess(['forecast', ...QUIET, '--save-motion', folder, side]);
    const reel = join(folder, 'reel.wav');
    const motion = join(folder, 'a.motion');
    const ran = await runInProcess(['forecast', '--no-discovery', '--reel', reel, motion]);
    expect(ran.exitCode).toBe(0);
    expect(ran.stderr).toContain('a saved motion carries no sound to cut a test of');
    await expect(readFile(reel)).rejects.toThrow('ENOENT');
  });
});
