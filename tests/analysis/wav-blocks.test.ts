import { truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FrameRange } from '../../src/analysis/frame-source.js';
import { readFrames } from '../../src/analysis/wav-blocks.js';
import { type OpenWav, withWav } from '../../src/analysis/wav-file.js';
import { InputError } from '../../src/errors.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { ascii, chunk, wavBytes, wordBytes } from '../support/wav-writer.js';

const FRAMES = 1000;
const WORDS = Array.from({ length: 2 * FRAMES }, (_, word) => (word * 7919) % 2 ** 23);
const RAW = wordBytes(WORDS, 'pcm', 24);
const BYTES_PER_FRAME = 6;

async function writtenFile(): Promise<string> {
  const path = join(await temporaryFolder(), 'side.wav');
  const around = { first: [chunk('bext', ascii('odd'))], last: [chunk('cue ', ascii('end!'))] };
  await writeFile(path, wavBytes({ bitDepth: 24, words: WORDS, ...around }));
  return path;
}

async function collected(wav: OpenWav, range?: FrameRange): Promise<number[][]> {
  const blocks: number[][] = [];
  for await (const block of readFrames(wav, range)) blocks.push([...block]);
  return blocks;
}

describe('frames come back as they were written', () => {
  test('in one block by default, without a byte of the chunks around', async () => {
    await withWav(await writtenFile(), async (wav) => {
      expect(await collected(wav)).toEqual([[...RAW]]);
    });
  });

  test('whatever range and block size: only the cuts differ, each at a frame', async () => {
    await withWav(await writtenFile(), async (wav) => {
      const ends = fc.tuple(fc.nat(FRAMES), fc.nat(FRAMES));
      await fc.assert(
        fc.asyncProperty(ends, fc.integer({ min: 1, max: 7000 }), async (pair, blockBytes) => {
          const [firstFrame, endFrame] = [Math.min(...pair), Math.max(...pair)];
          const blocks = await collected(wav, { firstFrame, endFrame, blockBytes });
          const wanted = RAW.subarray(firstFrame * BYTES_PER_FRAME, endFrame * BYTES_PER_FRAME);
          expect(blocks.flat()).toEqual([...wanted]);
          const most = Math.max(blockBytes, BYTES_PER_FRAME);
          for (const { length } of blocks) {
            expect(length % BYTES_PER_FRAME).toBe(0);
            expect(length).toBeLessThanOrEqual(most);
          }
        }),
        { numRuns: 60 },
      );
    });
  });

  test('whatever room they are read into, and there is nothing else in it', async () => {
    await withWav(await writtenFile(), async (wav) => {
      const ends = fc.tuple(fc.nat(FRAMES), fc.nat(FRAMES));
      const sizes = fc.integer({ min: BYTES_PER_FRAME, max: 7000 });
      await fc.assert(
        fc.asyncProperty(ends, sizes, async (pair, size) => {
          const [firstFrame, endFrame] = [Math.min(...pair), Math.max(...pair)];
          const room = new Uint8Array(size);
          const read: number[] = [];
          for await (const block of readFrames(wav, { firstFrame, endFrame, room })) {
            expect(block.buffer).toBe(room.buffer);
            expect(block.length % BYTES_PER_FRAME).toBe(0);
            read.push(...block);
          }
          const wanted = RAW.subarray(firstFrame * BYTES_PER_FRAME, endFrame * BYTES_PER_FRAME);
          expect(read).toEqual([...wanted]);
        }),
        { numRuns: 60 },
      );
    });
  });

  test('two readers of one open file do not disturb each other', async () => {
    await withWav(await writtenFile(), async (wav) => {
      const [once, again] = await Promise.all([
        collected(wav, { blockBytes: 60 }),
        collected(wav, { blockBytes: 6 }),
      ]);
      expect(once.flat()).toEqual(again.flat());
    });
  });

  test.each([
    { firstFrame: -1 },
    { endFrame: FRAMES + 1 },
    { firstFrame: 2, endFrame: 1 },
    { firstFrame: Number.NaN },
  ])('a range outside the file is a bug of the caller: %o', async (range) => {
    await withWav(await writtenFile(), async (wav) => {
      await expect(collected(wav, range)).rejects.toThrow(RangeError);
    });
  });
});

test.each<[string, FrameRange]>([
  // The second block may be read while the first is used, the third may not.
  ['ahead', { blockBytes: 300 }],
  ['in place', { room: new Uint8Array(300) }],
])(
  'a file that shrinks while it is read %s is an InputError that names the byte',
  async (_, range) => {
    const path = await writtenFile();
    const reading = withWav(path, async (wav) => {
      for await (const _ of readFrames(wav, range)) await truncate(path, 1000);
    });
    const error = await reading.catch((cause: unknown) => cause);
    if (!(error instanceof InputError)) throw new Error('not refused', { cause: error });
    expect(error.code).toBe('changed-while-read');
    expect(error.message).toContain('byte 1000');
  },
);

test('what is read in place fails like any reading', async () => {
  const path = await writtenFile();
  const reading = withWav(path, async ({ file, source }) => {
    const closed = { ...source, handle: { ...source.handle, fd: -1 } };
    for await (const _ of readFrames({ file, source: closed }, { room: new Uint8Array(300) }));
  });
  await expect(reading).rejects.toBeInstanceOf(InputError);
});

test('reading in place leaves a turn to others every mebibyte', async () => {
  const path = join(await temporaryFolder(), 'side.wav');
  await writeFile(path, wavBytes({ bitDepth: 8, words: new Uint8Array(4 * 2 ** 20) }));
  let [turns, blocks, isOver] = [0, 0, false];
  const takeTurn = () => {
    turns++;
    if (!isOver) setImmediate(takeTurn);
  };
  await withWav(path, async (wav) => {
    setImmediate(takeTurn);
    for await (const _ of readFrames(wav, { room: new Uint8Array(2 ** 16) })) blocks++;
    isOver = true;
  });
  expect(blocks).toBe(64);
  expect(turns).toBeGreaterThanOrEqual(3);
});

describe('the file is closed', () => {
  const closedAfter = async (use: (wav: OpenWav) => Promise<void>) => {
    let opened: OpenWav | undefined;
    const path = await writtenFile();
    await withWav(path, async (wav) => {
      opened = wav;
      await use(wav);
    }).catch(() => undefined);
    return opened?.source.handle.fd;
  };

  // A closed handle's descriptor is −1.
  test('after a full reading', async () => {
    expect(await closedAfter(async (wav) => void (await collected(wav)))).toBe(-1);
  });

  test('when the reader stops at the first block', async () => {
    const stop = async (wav: OpenWav) => {
      for await (const _ of readFrames(wav, { blockBytes: 6 })) break;
    };
    expect(await closedAfter(stop)).toBe(-1);
  });

  test('when the reader fails', async () => {
    const fail = async () => {
      throw new Error('the reader failed');
    };
    expect(await closedAfter(fail)).toBe(-1);
  });
});
