import { open } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readFrames } from '../../src/analysis/wav-blocks.js';
import { withWav } from '../../src/analysis/wav-file.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { chunk, formatChunk, longSizesChunk, riff } from '../support/wav-writer.js';

const GIB = 2 ** 30;
const NOTHING = new Uint8Array(0);
const OPEN = 0xffffffff;

/** A file with holes: `parts` at their bytes, zeros that take no room on the disk between them. */
async function sparseFile(parts: readonly (readonly [at: number, bytes: Uint8Array])[]) {
  const path = join(await temporaryFolder(), 'long.wav');
  const handle = await open(path, 'w');
  for (const [at, bytes] of parts) await handle.write(bytes, 0, bytes.length, at);
  await handle.close();
  return path;
}

// Source: EBU Tech 3306 and ITU-R BS.2088 (from memory): 0xFFFFFFFF stands for the size in ds64.
test.each(['RF64', 'BW64'])('%s: sound of 6 GiB ends where ds64 says', async (container) => {
  const size = 6 * GIB;
  const head = riff(
    [longSizesChunk(BigInt(size)), formatChunk(), chunk('data', NOTHING, OPEN)],
    container,
  );
  const lastFrame = Uint8Array.from([1, 2, 3, 4]);
  const end = head.length + size;
  const path = await sparseFile([
    [0, head],
    [end - 4, lastFrame],
    [end, chunk('cue ', lastFrame)],
  ]);

  await withWav(path, async (wav) => {
    expect(wav.file).toMatchObject({ frames: size / 4, truncated: false, container });
    const range = { firstFrame: wav.file.frames - 1 };
    for await (const block of readFrames(wav, range)) expect([...block]).toEqual([1, 2, 3, 4]);
  });
});

test('a format behind 5 GiB of another chunk is found by the table of ds64', async () => {
  const long = 5 * GIB;
  const sizes = longSizesChunk(8n, [
    ['axml', 7n],
    ['bulk', BigInt(long)],
  ]);
  const head = riff([sizes, chunk('bulk', NOTHING, OPEN)], 'BW64');
  const rest = [formatChunk(), chunk('data', new Uint8Array(8), OPEN)];
  const path = await sparseFile([
    [0, head],
    [head.length + long, rest[0] ?? NOTHING],
    [head.length + long + 24, rest[1] ?? NOTHING],
  ]);
  await withWav(path, async ({ file }) => {
    expect(file).toMatchObject({ frames: 2, truncated: false });
    expect(file.dataOffset).toBe(head.length + long + 32);
  });
});

test('RIFF sound of 3 GiB, over 31 bits, is whole', async () => {
  const size = 3 * GIB;
  const head = riff([formatChunk(), chunk('data', NOTHING, size)]);
  const path = await sparseFile([
    [0, head],
    [head.length + size - 1, Uint8Array.of(0)],
  ]);
  await withWav(path, async ({ file }) => {
    expect(file).toMatchObject({ frames: size / 4, truncated: false });
  });
});
