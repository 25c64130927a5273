import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { hashAudio } from '../../src/analysis/hash-audio.js';
import { withWav } from '../../src/analysis/wav-file.js';
import { wavFrames } from '../../src/analysis/wav-frames.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { ascii, chunk, type WavOptions, wavBytes, wordBytes } from '../support/wav-writer.js';

const WORDS = Array.from({ length: 2 * 600_000 }, (_, word) => ((word * 7919) % 60_000) - 30_000);

async function hashOf(options: Partial<WavOptions>, cutBytes = 0): Promise<string> {
  const path = join(await temporaryFolder(), 'x.wav');
  const bytes = wavBytes({ words: WORDS, ...options });
  await writeFile(path, bytes.subarray(0, bytes.length - cutBytes));
  return await withWav(path, (wav) => hashAudio(wavFrames(wav)));
}

test('the hash is that of the sound alone, whatever blocks it is read in', async () => {
  const sound = wordBytes(WORDS, 'pcm', 16);
  expect(sound.length).toBeGreaterThan(2 * 2 ** 20);
  expect(await hashOf({})).toBe(createHash('sha256').update(sound).digest('hex'));
});

// Source: FIPS 180-2, appendix B.1 to B.3 (from memory; the same by coreutils' sha256sum 9.1).
test.each([
  ['abc', 1, 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    1,
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
  ],
  ['a', 1_000_000, 'cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0'],
])('the hash of the bytes %j, %d times, is the published one', async (text, times, expected) => {
  // 8-bit words are stored with 128 added.
  const words = Array.from(text.repeat(times), (letter) => letter.charCodeAt(0) - 128);
  expect(await hashOf({ words, bitDepth: 8, channels: 1 })).toBe(expected);
});

test('other chunks, another container and a longer head do not matter', async () => {
  const named = chunk('LIST', ascii('INFOINAMsomething'));
  const variants: Partial<WavOptions>[] = [
    { first: [named] },
    { last: [named] },
    { formatLast: true },
    { container: 'RF64' },
    { extensible: true },
  ];
  const hashes = await Promise.all(variants.map((variant) => hashOf(variant)));
  expect(new Set(hashes)).toEqual(new Set([await hashOf({})]));
});

test('another sample, another order of samples and one frame less do', async () => {
  const plain = await hashOf({});
  expect(await hashOf({ words: WORDS.with(900_001, 1) })).not.toBe(plain);
  expect(await hashOf({ words: WORDS.toReversed() })).not.toBe(plain);
  expect(await hashOf({ words: WORDS.slice(0, -2) })).not.toBe(plain);
});

test('of a cut last frame no byte counts', async () => {
  const whole = wordBytes(WORDS.slice(0, -2), 'pcm', 16);
  expect(await hashOf({}, 3)).toBe(createHash('sha256').update(whole).digest('hex'));
});
