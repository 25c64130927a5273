import { readFile } from 'node:fs/promises';
import { isDeepStrictEqual } from 'node:util';
import { readFrames } from '../../src/analysis/wav-blocks.js';
import { type OpenWav, withWav } from '../../src/analysis/wav-file.js';
import { writeCueCopy } from '../../src/report/cue-copy/write-cue-copy.js';
import { readCues, readForm } from './riff-chunks.js';

const MARK = { frame: 0, length: 1, label: 'overcut', note: 'x' };

/**
 * Copies a WAV file and holds the copy against it: a form without fault, the same frames, one mark
 * more.
 * @throws InputError if the file cannot be read; another error if the copy does not hold
 */
export async function copyHolds(path: string, copy: string): Promise<void> {
  const sound = await withWav(path, async (wav) => {
    await writeCueCopy(wav, copy, [MARK]);
    return await soundOf(wav);
  });
  const [cue] = readCues(readForm(await readFile(copy)), 1);
  if (cue?.frame !== 0 || cue.length !== 1 || cue.label !== MARK.label) {
    throw new Error(`the copy's mark is ${JSON.stringify(cue)}`);
  }
  if (!isDeepStrictEqual(await withWav(copy, soundOf), sound)) {
    throw new Error('the copy has other frames');
  }
}

async function soundOf(wav: OpenWav): Promise<Buffer> {
  const blocks: Buffer[] = [];
  for await (const block of readFrames(wav)) blocks.push(Buffer.from(block));
  return Buffer.concat(blocks);
}
