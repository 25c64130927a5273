import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readFrames } from '../../../src/analysis/wav-blocks.js';
import { type OpenWav, withWav } from '../../../src/analysis/wav-file.js';
import { InputError } from '../../../src/errors.js';
import { writeCueCopy } from '../../../src/report/cue-copy/write-cue-copy.js';
import { HOSTILE_WAVS } from '../../support/hostile-wavs.js';
import { readCues, readForm } from '../../support/riff-chunks.js';
import { temporaryFolder } from '../../support/temporary-folder.js';
import { ascii, chunk, joined, wavBytes } from '../../support/wav-writer.js';

const MARK = { frame: 0, length: 1, label: 'overcut', note: 'x' };
const BREAKS_OFF = HOSTILE_WAVS.filter(({ expected }) => typeof expected !== 'string');

async function soundOf(wav: OpenWav): Promise<Buffer> {
  const blocks: Buffer[] = [];
  for await (const block of readFrames(wav)) blocks.push(Buffer.from(block));
  return Buffer.concat(blocks);
}

/**
 * Copies a file that furrow reads and holds the copy against it: a form without fault, the same
 * frames, one mark more.
 * @returns whether furrow reads the file at all
 */
async function copyHolds(folder: string, bytes: Uint8Array): Promise<boolean> {
  const [path, copy] = [join(folder, 'side.wav'), join(folder, 'copy.wav')];
  await writeFile(path, bytes);
  let sound: Buffer;
  try {
    sound = await withWav(path, async (wav) => {
      await writeCueCopy(wav, copy, [MARK]);
      return await soundOf(wav);
    });
  } catch (error) {
    if (error instanceof InputError) return false;
    throw error;
  }
  const form = readForm(await readFile(copy));
  expect(readCues(form, 1)).toMatchObject([{ frame: 0, length: 1, label: 'overcut' }]);
  expect(await withWav(copy, soundOf)).toEqual(sound);
  return true;
}

test.each(BREAKS_OFF)('$name: its copy is without fault and has the same frames', async (wav) => {
  expect(await copyHolds(await temporaryFolder(), wav.bytes)).toBe(true);
});

test('whatever bytes of a file are wrong, its copy is without fault or it is refused', async () => {
  const folder = await temporaryFolder();
  const cues = chunk('cue ', joined([Uint8Array.of(1, 0, 0, 0), new Uint8Array(24)]));
  const list = chunk('LIST', joined([ascii('adtl'), chunk('labl', ascii('\x01\0\0\0x\0'))]));
  const wholes = (['RIFF', 'RF64'] as const).map((container) =>
    wavBytes({ container, words: Array(40).fill(257), first: [cues], last: [list] }),
  );
  const change = fc.tuple(fc.nat(200), fc.constantFrom(0, 1, 2, 0x20, 0x64, 0x80, 0xff));
  let read = 0;
  await fc.assert(
    fc.asyncProperty(
      fc.constantFrom(...wholes),
      fc.array(change, { minLength: 1, maxLength: 4 }),
      async (whole, changes) => {
        const bytes = Uint8Array.from(whole);
        for (const [at, byte] of changes) bytes[at % bytes.length] = byte;
        if (await copyHolds(folder, bytes)) read += 1;
      },
    ),
    { numRuns: 200, seed: 8 },
  );
  expect(read).toBeGreaterThan(50);
});
