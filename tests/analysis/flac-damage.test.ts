import { truncate } from 'node:fs/promises';
import { describe, expect, onTestFinished, test, vi } from 'vitest';
import { withSound } from '../../src/analysis/open-sound.js';
import { BLOCKS, FRAMES, HEAD, PLAIN, RAW, WHOLE, WORDS } from '../support/flac-sound.js';
import { flacBlocks, flacBytes, flacHead } from '../support/flac-writer.js';
import { readSound, refusalOf, soundPath } from '../support/read-sound.js';
import { ascii, joined } from '../support/wav-writer.js';

describe('a file that breaks off', () => {
  const bytesOf = (blocks: number) => joined([HEAD, ...BLOCKS.slice(0, blocks)]).length;

  test.each([
    ['in a block', bytesOf(101) - 20, 100],
    ['a byte before the end of a block', bytesOf(101) - 1, 100],
    ['between two blocks', bytesOf(100), 100],
    // Nothing tells any more where the block before it ends.
    ['in the head of a block', bytesOf(100) + 3, 99],
    ['in the second block', bytesOf(1) + 90, 1],
  ])('%s: all whole blocks before it are there', async (_, length, blocks) => {
    const { file, bytes } = await readSound(await soundPath(WHOLE.subarray(0, length)));
    expect(file).toMatchObject({ frames: 300 * blocks, truncated: true });
    expect(Buffer.compare(bytes, RAW.subarray(0, 4 * 300 * blocks))).toBe(0);
  });

  test.each([
    ['no number of frames', 0],
    ['more frames than there are', FRAMES + 1],
    ['fewer', FRAMES - 1],
    ['2^36 − 1', 2 ** 36 - 1],
  ])('a head that says %s: those that are there, and truncated', async (_, frames) => {
    const { file, bytes } = await readSound(await soundPath(flacBytes({ ...PLAIN, frames })));
    expect(file).toMatchObject({ frames: FRAMES, truncated: true });
    expect(Buffer.compare(bytes, RAW)).toBe(0);
  });

  test('zeros behind the last block change nothing, however often it is read', async () => {
    await withSound(await soundPath(joined([WHOLE, new Uint8Array(100)])), async (sound) => {
      expect(sound.file).toMatchObject({ frames: FRAMES, truncated: false });
      for (const firstFrame of [FRAMES - 400, 3000, FRAMES - 100, 0]) {
        const found: Uint8Array[] = [];
        for await (const block of sound.source.read({ firstFrame })) found.push(block.slice());
        expect(Buffer.compare(joined(found), RAW.subarray(4 * firstFrame))).toBe(0);
      }
    });
  });

  test('more zeros than a block is long are none, and the block before them has no end', async () => {
    const { file, bytes } = await readSound(
      await soundPath(joined([WHOLE, new Uint8Array(2 ** 16)])),
    );
    expect(file).toMatchObject({ frames: FRAMES - 300, truncated: true });
    expect(bytes.length).toBe(4 * (FRAMES - 300));
  });

  test('what follows the last block and is none is left out', async () => {
    const junk = Uint8Array.from({ length: 3000 }, (_, at) => (at * 7919) % 251);
    const { file, bytes } = await readSound(await soundPath(joined([WHOLE, junk])));
    expect(file).toMatchObject({ frames: FRAMES - 300, truncated: true });
    expect(bytes.length).toBe(4 * (FRAMES - 300));
  });

  test('a last block with a number that its place cannot have is none', async () => {
    for (const blockFrames of [300, Array.from({ length: 200 }, () => 300)]) {
      const blocks = flacBlocks({ ...PLAIN, blockFrames });
      const far = typeof blockFrames === 'number' ? 2 ** 30 : 2 ** 35;
      // With right checksums.
      const last = flacBlocks({ words: WORDS.slice(0, 600), blockFrames, firstNumber: far })[0];
      const head = flacHead({ ...PLAIN, blockFrames });
      const path = await soundPath(joined([head, ...blocks, last ?? new Uint8Array(0)]));
      const { file } = await readSound(path);
      expect(file).toMatchObject({ frames: FRAMES, truncated: false });
    }
  });

  test('one that shrinks while it is read is an InputError', async () => {
    const path = await soundPath(WHOLE);
    const reading = withSound(path, async ({ source }) => {
      await truncate(path, 5000);
      for await (const _ of source.read());
    });
    await expect(reading).rejects.toMatchObject({ code: 'changed-while-read' });
  });
});

describe('damage', () => {
  const withByte = (bytes: Uint8Array, at: number) => {
    const changed = Uint8Array.from(bytes);
    changed[at] = (changed[at] ?? 0) ^ 0x10;
    return changed;
  };
  const startOf = (block: number) => joined([HEAD, ...BLOCKS.slice(0, block)]).length;

  test.each([
    ['in its samples', startOf(50) + 200, 50],
    ['in its checksum', startOf(51) - 1, 50],
    ['in its head: the one before it then has no end', startOf(50) + 2, 49],
    ['in its first byte', startOf(50), 49],
  ])('in a block, %s, is told with byte and frame', async (_, at, block) => {
    const path = await soundPath(withByte(WHOLE, at));
    const error = await refusalOf(path);
    expect(error.code).toBe('sound-damaged');
    expect(error.message).toContain(`byte ${startOf(block)} (frame ${300 * block})`);
    // Whoever reads another part does not come by it.
    const { bytes } = await readSound(path, { firstFrame: 40_000 });
    expect(Buffer.compare(bytes, RAW.subarray(4 * 40_000))).toBe(0);
  });

  test('a block that is missing is told where it should be', async () => {
    const error = await refusalOf(await soundPath(joined([HEAD, ...BLOCKS.toSpliced(50, 1)])));
    expect(error).toMatchObject({ code: 'sound-damaged' });
    expect(error.message).toContain(`byte ${startOf(50)} (frame ${50 * 300})`);
  });

  test('a beginning that is missing is told', async () => {
    const error = await refusalOf(await soundPath(joined([HEAD, ...BLOCKS.slice(1)])));
    expect(error).toMatchObject({ code: 'sound-damaged' });
    expect(error.message).toContain('frame 0');
  });

  test('samples that are not those of the MD5 are told; without an MD5 nothing is known', async () => {
    const md5 = Uint8Array.from({ length: 16 }, (_, at) => at);
    const error = await refusalOf(await soundPath(flacBytes({ ...PLAIN, md5 })));
    expect(error).toMatchObject({ code: 'sound-damaged' });
    expect(error.message).toContain('MD5');
    const none = await soundPath(flacBytes({ ...PLAIN, md5: new Uint8Array(16) }));
    expect((await readSound(none)).file.frames).toBe(FRAMES);
  });

  test('a block whose checksum is right and whose content is not is refused, unsaid elsewhere', async () => {
    const said = vi.spyOn(console, 'error').mockImplementation(() => {});
    onTestFinished(() => said.mockRestore());
    // Behind the head of 8 bytes a kind of channel that is reserved.
    const spoil = (block: Uint8Array, index: number) => {
      if (index === 7) block[8] = 0x04;
    };
    const md5 = new Uint8Array(16);
    const error = await refusalOf(await soundPath(flacBytes({ ...PLAIN, md5, spoil })));
    expect(error).toMatchObject({ code: 'sound-damaged' });
    expect(said).not.toHaveBeenCalled();
  });
});

describe('what is refused says where and why', () => {
  const stream = (at: number, ...values: number[]) => {
    const bytes = Uint8Array.from(WHOLE);
    bytes.set(values, 8 + at);
    return bytes;
  };

  test.each<[string, Uint8Array, string]>([
    ['a marker alone', ascii('fLaC'), 'no-data'],
    ['names alone', ascii('ID3\x04\0\0\0\0\0\0'), 'not-flac'],
    [
      'names before something else',
      joined([ascii('ID3\x04\0\0\0\0\0\0'), ascii('\xff\xfb\x90\0more')]),
      'not-flac',
    ],
    ['names beyond the end', ascii('ID3\x04\0\0\x7f\x7f\x7f\x7f'), 'not-flac'],
    [
      'another block of metadata first',
      joined([ascii('fLaC'), Uint8Array.of(4, 0, 0, 34), new Uint8Array(40)]),
      'no-format',
    ],
    [
      'a first block that is too short',
      joined([ascii('fLaC'), Uint8Array.of(0, 0, 0, 33), new Uint8Array(40)]),
      'no-format',
    ],
    ['a first block that breaks off', WHOLE.subarray(0, 30), 'no-format'],
    ['metadata alone', HEAD, 'no-data'],
    [
      'metadata beyond the end',
      flacHead({ ...PLAIN, metadata: [[1, new Uint8Array(900)]] }).subarray(0, 60),
      'no-data',
    ],
    [
      'nothing but metadata',
      flacHead({
        ...PLAIN,
        metadata: Array.from({ length: 5000 }, () => [1, new Uint8Array(0)] as const),
      }),
      'bad-header',
    ],
    [
      'a first block of sound that breaks off',
      WHOLE.subarray(0, HEAD.length + 100),
      'sound-damaged',
    ],
    ['8 channels', stream(12, 0x4e), 'bad-channels'],
    ['32 bits', stream(12, 0x43, 0xf0), 'bad-encoding'],
    ['20 bits', stream(12, 0x43, 0x30), 'bad-encoding'],
    ['4 bits', stream(12, 0x42, 0x30), 'bad-encoding'],
    ['0 Hz', stream(10, 0, 0, 0x02), 'bad-rate'],
    ['655 350 Hz', stream(10, 0x9f), 'bad-rate'],
    ['channels that the blocks do not have', blocksOfAnother(), 'sound-damaged'],
  ])('%s', async (_, bytes, code) => {
    const error = await refusalOf(await soundPath(bytes));
    expect(error.code).toBe(code);
    expect(error.message).toMatch(/: byte \d+.*: found .*, expected .*; .+/);
  });

  /** The blocks of one file behind the head of another with one channel less. */
  function blocksOfAnother(): Uint8Array {
    const mono = flacHead({ ...PLAIN, channels: 1 });
    return joined([mono, ...BLOCKS]);
  }
});
