import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { withSound } from '../../src/analysis/open-sound.js';
import { FRAMES, noise, PLAIN, RAW, VARIED, WHOLE } from '../support/flac-sound.js';
import { flacBytes } from '../support/flac-writer.js';
import { readSound, soundPath } from '../support/read-sound.js';
import { ascii, joined, wordBytes } from '../support/wav-writer.js';

describe('samples come out exactly', () => {
  test.each([8, 16, 24])('%i bits', async (bits) => {
    const words = noise(3000, bits);
    const { file, bytes } = await readSound(
      await soundPath(flacBytes({ words, bits, blockFrames: 400 })),
    );
    expect(file).toMatchObject({
      container: 'FLAC',
      format: { encoding: 'pcm', bitDepth: bits, channels: 2, sampleRate: 44_100 },
      validBits: bits,
      frames: 1500,
      truncated: false,
    });
    expect(bytes).toEqual(wordBytes(words, 'pcm', bits));
  });

  test('all 2^16 values of 16 bits, and of 24 bits 2^17 spread over the range', async () => {
    for (const [bits, count] of [
      [16, 2 ** 16],
      [24, 2 ** 17],
    ] as const) {
      const step = 2 ** bits / count;
      // The odd step reaches all remainders.
      const words = Array.from({ length: count }, (_, at) => {
        return -(2 ** (bits - 1)) + Math.floor(at * step) + (at % Math.max(1, step));
      });
      const { bytes } = await readSound(await soundPath(flacBytes({ words, bits, channels: 1 })));
      expect(Buffer.compare(bytes, wordBytes(words, 'pcm', bits))).toBe(0);
    }
  });

  test('one channel, 192 kHz, blocks of any length', async () => {
    const words = noise(1000, 24);
    const blockFrames = [16, 700, 1, 200, 83];
    const options = { words, bits: 24, channels: 1, sampleRate: 192_000, blockFrames } as const;
    const { file, bytes } = await readSound(await soundPath(flacBytes(options)));
    expect(file).toMatchObject({ frames: 1000, truncated: false, format: { sampleRate: 192_000 } });
    expect(bytes).toEqual(wordBytes(words, 'pcm', 24));
  });

  test.each([8, 16, 24])('%i bits, where blocks leave it to the file to say so', async (bits) => {
    const words = noise(3000, bits);
    const path = await soundPath(flacBytes({ words, bits, blockFrames: 400, tellsFormat: false }));
    expect((await readSound(path)).bytes).toEqual(wordBytes(words, 'pcm', bits));
  });

  test('names before and behind the sound, and other metadata, do not matter', async () => {
    const words = noise(2000, 16);
    const flac = flacBytes({
      words,
      metadata: [
        [4, ascii('odd')],
        [1, new Uint8Array(5000)],
        [126, ascii('?')],
      ],
    });
    const before = Uint8Array.from([...ascii('ID3\x04\0\0\0\0\x01\x02'), ...new Uint8Array(130)]);
    const behind = Uint8Array.from([...ascii('TAG'), ...new Uint8Array(125)]);
    const { file, bytes } = await readSound(await soundPath(joined([before, flac, behind])));
    expect(file).toMatchObject({ frames: 1000, truncated: false });
    expect(bytes).toEqual(wordBytes(words, 'pcm', 16));
  });
});

describe('any range in blocks of any size gives the same frames', () => {
  test.each([
    ['blocks of one length', WHOLE],
    ['blocks of two', flacBytes({ ...PLAIN, blockFrames: VARIED })],
  ])('%s', async (_, flac) => {
    const path = await soundPath(flac);
    const ends = fc.tuple(fc.nat(FRAMES), fc.nat(2000));
    await withSound(path, async ({ source }) => {
      await fc.assert(
        fc.asyncProperty(
          ends,
          fc.integer({ min: 1, max: 9000 }),
          async ([from, more], blockBytes) => {
            const [firstFrame, endFrame] = [from, Math.min(from + more, FRAMES)];
            const found: Uint8Array[] = [];
            for await (const block of source.read({ firstFrame, endFrame, blockBytes })) {
              expect(block.length % 4).toBe(0);
              expect(block.length).toBeLessThanOrEqual(Math.max(blockBytes, 4));
              found.push(Uint8Array.from(block));
            }
            const wanted = RAW.subarray(4 * firstFrame, 4 * endFrame);
            expect(Buffer.compare(joined(found), wanted)).toBe(0);
          },
        ),
        { numRuns: 60 },
      );
    });
  });

  test('ranges that follow one another, as tracks are read, with another read between them', async () => {
    await withSound(await soundPath(WHOLE), async ({ source }) => {
      const found: Uint8Array[] = [];
      const read = async (firstFrame: number, endFrame: number) => {
        const blocks: Uint8Array[] = [];
        for await (const block of source.read({ firstFrame, endFrame })) blocks.push(block.slice());
        return joined(blocks);
      };
      for (let frame = 0; frame < FRAMES; frame += 7777) {
        const end = Math.min(frame + 7777, FRAMES);
        found.push(await read(frame, end));
        if (frame === 3 * 7777) {
          expect(Buffer.compare(await read(50, 60), RAW.subarray(200, 240))).toBe(0);
          expect((await read(60, 60)).length).toBe(0);
        }
      }
      expect(Buffer.compare(joined(found), RAW)).toBe(0);
    });
  });

  test('a reader that stops early leaves the next one its own', async () => {
    await withSound(await soundPath(WHOLE), async ({ source }) => {
      for await (const _ of source.read({ blockBytes: 400 })) break;
      for await (const block of source.read({ firstFrame: 100, endFrame: 110 })) {
        expect(Buffer.compare(block, RAW.subarray(400, 440))).toBe(0);
      }
    });
  });

  test('two readers of one open file do not disturb each other', async () => {
    await withSound(await soundPath(WHOLE), async ({ source }) => {
      const read = async (firstFrame: number) => {
        const found: Uint8Array[] = [];
        for await (const block of source.read({ firstFrame, blockBytes: 4000 })) {
          found.push(Uint8Array.from(block));
        }
        return joined(found);
      };
      const [once, again] = await Promise.all([read(0), read(30_001)]);
      expect(Buffer.compare(once, RAW)).toBe(0);
      expect(Buffer.compare(again, RAW.subarray(4 * 30_001))).toBe(0);
    });
  });

  test('a range outside the file is a bug of the caller', async () => {
    const path = await soundPath(WHOLE);
    await expect(readSound(path, { endFrame: FRAMES + 1 })).rejects.toThrow(RangeError);
  });
});
