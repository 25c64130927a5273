import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { withSound } from '../../src/analysis/open-sound.js';
import { InputError } from '../../src/errors.js';
import { FAILURE_CODES } from '../../src/report/failure.js';
import { aiffBytes } from '../support/aiff-writer.js';
import { type FlacOptions, flacBlocks, flacBytes, flacHead } from '../support/flac-writer.js';
import { mutated } from '../support/mutate.js';
import { seeded } from '../support/signals.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { ascii, joined } from '../support/wav-writer.js';

const WORDS = Array.from({ length: 2400 }, (_, word) => ((word * 7919) % 30_000) - 15_000);
const BYTES = Uint8Array.from(WORDS, (word) => word & 0xff);
const FLAC: FlacOptions = { words: WORDS, blockFrames: 100 };
const NAMES = joined([ascii('ID3\x04\0\0\0\0\0\x40'), new Uint8Array(64)]);

/** Most that one file may take, on whatever machine it is. */
const MOST_SECONDS = 2;
const MOST_BYTES = 400e6;

test.each([
  ['AIFF', aiffBytes({ sound: BYTES }), 500],
  [
    'AIFF, the common chunk last',
    aiffBytes({ sound: BYTES, commonLast: true, sampleSize: 24 }),
    400,
  ],
  ['AIFF-C of floats', aiffBytes({ sound: BYTES, compression: 'fl32', sampleSize: 32 }), 400],
  ['FLAC', flacBytes(FLAC), 500],
  ['FLAC, blocks of many lengths', flacBytes({ ...FLAC, blockFrames: [16, 500, 84, 600] }), 300],
  [
    'FLAC with names and metadata',
    joined([NAMES, flacBytes({ ...FLAC, metadata: [[4, BYTES]] })]),
    300,
  ],
])(
  '%s with anything wrong is read, or refused with a listed code, in time',
  async (_, good, count) => {
    const next = seeded(good.length);
    const codes = await codesOf(Array.from({ length: count }, () => mutated(good, next)));
    // All the same would mean that little was reached.
    expect(codes.size).toBeGreaterThan(4);
    expect(codes.get('read')).toBeGreaterThan(10);
  },
);

test('FLAC whose blocks are wrong inside and whose checksums are right: the same', async () => {
  const next = seeded(2003);
  const files = Array.from({ length: 250 }, () => {
    const blocks = flacBlocks({
      ...FLAC,
      spoil: (block) => {
        // Also of the head's parts that are not under its own checksum, which are none.
        if (next() < 0.2) block[9 + Math.floor((block.length - 9) * next() ** 3)] = 256 * next();
      },
    });
    return joined([flacHead({ ...FLAC, md5: new Uint8Array(16) }), ...blocks]);
  });
  const codes = await codesOf(files);
  expect([...codes.keys()].sort()).toEqual(['read', 'sound-damaged']);
});

/** How often each comes out; each within its time and memory. */
async function codesOf(files: readonly Uint8Array[]): Promise<Map<string, number>> {
  const path = join(await temporaryFolder(), 'side.wav');
  const codes = new Map<string, number>();
  for (const bytes of files) {
    await writeFile(path, bytes);
    const begun = performance.now();
    const code = await codeOf(path);
    const told = `${code}: ${Buffer.from(bytes.subarray(0, 100)).toString('hex')}`;
    expect((performance.now() - begun) / 1000, told).toBeLessThan(MOST_SECONDS);
    codes.set(code, (codes.get(code) ?? 0) + 1);
  }
  expect(process.memoryUsage().rss).toBeLessThan(MOST_BYTES);
  return codes;
}

async function codeOf(path: string): Promise<string> {
  try {
    return await withSound(path, async ({ file, source, bytesPerFrame }) => {
      const { bitDepth, channels } = file.format;
      let length = 0;
      for await (const block of source.read()) length += block.length;
      expect(length).toBe((file.frames * bitDepth * channels) / 8);
      expect(bytesPerFrame).toBeGreaterThan(0);
      return 'read';
    });
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    expect(FAILURE_CODES).toContain(error.code);
    expect(error.message).toMatch(/: found .*, expected .*; .+/);
    expect(error.message).toMatch(/^[\x20-\x7e…–µ]+$/);
    return error.code;
  }
}
