import { createHash } from 'node:crypto';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { expect, test } from 'vitest';
import { hashAudio } from '../../src/analysis/hash-audio.js';
import { withWav } from '../../src/analysis/wav-file.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { ascii, chunk, type WavOptions, wavBytes, wordBytes } from '../support/wav-writer.js';

const WORDS = Array.from({ length: 2 * 600_000 }, (_, word) => ((word * 7919) % 60_000) - 30_000);

async function hashOf(options: Partial<WavOptions>, cutBytes = 0): Promise<string> {
  const path = join(await temporaryFolder(), 'x.wav');
  const bytes = wavBytes({ words: WORDS, ...options });
  await writeFile(path, bytes.subarray(0, bytes.length - cutBytes));
  return await withWav(path, hashAudio);
}

test('the hash is that of the sound alone, by sha256sum (coreutils)', async () => {
  const sound = wordBytes(WORDS, 'pcm', 16);
  const { stdout } = await execa('sha256sum', { input: sound });
  expect(await hashOf({})).toBe(stdout.split(' ')[0]);
});

test('the hash of "abc" is the one of FIPS 180-2, appendix B.1', async () => {
  // 8-bit words are stored with 128 added.
  const words = Array.from('abc', (letter) => letter.charCodeAt(0) - 128);
  expect(await hashOf({ words, bitDepth: 8, channels: 1 })).toBe(
    'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
  );
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
