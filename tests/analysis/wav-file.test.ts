import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readWavHeader, type WavFile } from '../../src/analysis/wav-file.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { ascii, chunk, formatChunk, riff, wavBytes } from '../support/wav-writer.js';

const STEREO = [1, -2, 3, -4, 5, -6];
const ODD = chunk('bext', ascii('odd'));
const CUE = chunk('cue ', new Uint8Array(28));
const UNKNOWN = chunk('\x00\xff\x01\x80', ascii('whatever it is'));

async function headerOf(bytes: Uint8Array): Promise<WavFile> {
  const path = join(await temporaryFolder(), 'side.wav');
  await writeFile(path, bytes);
  return await readWavHeader(path);
}

describe('what the header says comes back', () => {
  test.each([
    { encoding: 'pcm', bitDepth: 8, channels: 1, sampleRate: 8000 },
    { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: 44_100 },
    { encoding: 'pcm', bitDepth: 24, channels: 2, sampleRate: 96_000 },
    { encoding: 'pcm', bitDepth: 32, channels: 1, sampleRate: 48_000 },
    { encoding: 'float', bitDepth: 32, channels: 2, sampleRate: 88_200 },
    { encoding: 'float', bitDepth: 64, channels: 2, sampleRate: 192_000 },
  ] as const)('$encoding $bitDepth, $channels channel(s), $sampleRate Hz', async (format) => {
    for (const container of ['RIFF', 'RF64', 'BW64'] as const) {
      for (const extensible of [false, true]) {
        const header = await headerOf(
          wavBytes({ ...format, container, extensible, words: STEREO }),
        );
        expect(header).toMatchObject({ container, format, validBits: format.bitDepth });
        expect(header).toMatchObject({ frames: 6 / format.channels, truncated: false });
      }
    }
  });

  test.each([
    { bits: 20, word: 24, extensible: false },
    { bits: 12, word: 16, extensible: false },
    { bits: 20, word: 24, extensible: true },
    { bits: 24, word: 32, extensible: true },
  ])('$bits valid bits lie in words of $word', async ({ bits, word, extensible }) => {
    const options = extensible ? { bitDepth: word, validBits: bits } : { bitDepth: bits };
    const header = await headerOf(wavBytes({ ...options, extensible, words: STEREO }));
    expect(header).toMatchObject({ format: { bitDepth: word }, validBits: bits, frames: 3 });
  });

  test('valid bits left at 0 mean all of them', async () => {
    const options = { extensible: true, validBits: 0, bitDepth: 24, words: STEREO };
    expect((await headerOf(wavBytes(options))).validBits).toBe(24);
  });
});

describe('chunks in any order, of any name and odd length, do not move the sound', () => {
  test.each([
    { order: 'format, data', options: {}, dataOffset: 44 },
    { order: 'data, format', options: { formatLast: true }, dataOffset: 20 },
    { order: 'odd bext first', options: { first: [ODD] }, dataOffset: 56 },
    { order: 'odd bext and cue between', options: { between: [ODD, CUE] }, dataOffset: 92 },
    {
      order: 'unknown, data, odd bext, format',
      options: { first: [UNKNOWN], between: [ODD], formatLast: true },
      dataOffset: 42,
    },
    {
      order: 'a second data chunk last',
      options: { last: [chunk('data', ascii('other'))] },
      dataOffset: 44,
    },
  ])('$order', async ({ options, dataOffset }) => {
    const header = await headerOf(wavBytes({ words: STEREO, ...options }));
    expect(header).toMatchObject({ dataOffset, frames: 3, truncated: false });
  });

  test('an odd number of bytes of sound is padded, and what follows is still found', async () => {
    const words = [1, 2, 3];
    const header = await headerOf(
      wavBytes({ bitDepth: 8, channels: 1, words, formatLast: true, last: [CUE] }),
    );
    expect(header).toMatchObject({ frames: 3, truncated: false });
  });

  test('a format of 18 bytes, its extension empty, is read as one of 16', async () => {
    const long = chunk('fmt ', Uint8Array.from([...formatChunk().subarray(8), 0, 0]));
    const header = await headerOf(riff([long, chunk('data', new Uint8Array(8))]));
    expect(header).toMatchObject({ format: { bitDepth: 16 }, dataOffset: 46, frames: 2 });
  });

  test('of two formats or two sounds the first counts, whatever lies between', async () => {
    const [first, second] = [formatChunk({ sampleRate: 96_000 }), formatChunk({ channels: 1 })];
    const sounds = [chunk('data', new Uint8Array(8)), chunk('data', new Uint8Array(16))];
    const expected = { format: { sampleRate: 96_000, channels: 2 }, frames: 2 };
    expect(await headerOf(riff([first, second, ...sounds]))).toMatchObject(expected);
    expect(await headerOf(riff([...sounds, first, second]))).toMatchObject(expected);
  });
});
