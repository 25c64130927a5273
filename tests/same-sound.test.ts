// One sound in several containers: the forecast must not know which.
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { describe, expect, test } from 'vitest';
import { partsOf } from '../src/analysis/parts.js';
import { forecastFile } from '../src/forecast-side.js';
import { forecastDocument, forecastJson, resolveProfile, sideToJson } from '../src/index.js';
import { aiffBytes } from './support/aiff-writer.js';
import { flacBytes } from './support/flac-writer.js';
import { inventedProgram, RATE } from './support/invented-program.js';
import { needProgram } from './support/outside-program.js';
import { temporaryFolder } from './support/temporary-folder.js';
import { wavBytes, wordBytes } from './support/wav-writer.js';

const SETTINGS = resolveProfile();

/** The whole document, but for what is said of the file itself; and its hash. */
async function forecastOf(
  path: string,
): Promise<{ text: string; container: string; hash: string }> {
  const request = { levelDb: 0, planner: 'turn-ahead', hashAudio: true } as const;
  const file = await forecastFile(path, SETTINGS, request);
  const side = sideToJson(file, { quarters: true });
  const [source] = side.sources;
  if (source === undefined || file.audioSha256 === null) throw new Error('no source');
  const text = forecastJson(forecastDocument([{ ...side, name: '', sources: [] }], [], '0'));
  return { text, container: source.container, hash: file.audioSha256 };
}

/** Interleaved words of an invented program. */
function wordsOf(seconds: number, bits: number): Int32Array {
  const { left, right } = inventedProgram(seconds);
  const words = new Int32Array(2 * left.length);
  for (const [frame, value] of left.entries()) {
    words[2 * frame] = Math.round(value * 2 ** (bits - 1));
    words[2 * frame + 1] = Math.round((right[frame] ?? 0) * 2 ** (bits - 1));
  }
  return words;
}

test.each([16, 24])(
  'a few seconds of %i bits give the same bytes of JSON from each',
  async (bits) => {
    const folder = await temporaryFolder();
    const words = wordsOf(3, bits);
    const sound = wordBytes(words, 'pcm', bits);
    const swapped = Uint8Array.from(sound);
    for (let at = 0; at < sound.length; at += bits / 8)
      swapped.subarray(at, at + bits / 8).reverse();
    const files = {
      RIFF: wavBytes({ words, bitDepth: bits }),
      AIFF: aiffBytes({ sampleSize: bits, sound: swapped }),
      'AIFF-C': aiffBytes({ sampleSize: bits, sound, compression: 'sowt' }),
      FLAC: flacBytes({ words, bits }),
    };
    const found = [];
    for (const [container, bytes] of Object.entries(files)) {
      // The name says nothing.
      const path = join(folder, `${container}.wav`);
      await writeFile(path, bytes);
      const forecast = await forecastOf(path);
      expect(forecast.container).toBe(container);
      found.push(forecast);
    }
    expect(found).toHaveLength(4);
    expect(found[0]?.text).toContain('"landUm"');
    expect(new Set(found.map(({ text }) => text)).size).toBe(1);
    expect(new Set(found.map(({ hash }) => hash)).size).toBe(1);
  },
);

describe('a side that is measured in parts', () => {
  // Source: ffmpeg makes the others of the WAV file, live only.
  test('gives the same bytes of JSON from each', async (context) => {
    needProgram('ffmpeg', context);
    const folder = await temporaryFolder();
    const words = wordsOf(125, 16);
    const format = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;
    expect(partsOf(format, words.length / 2, SETTINGS).length).toBeGreaterThan(1);
    const wav = join(folder, 'side.wav');
    await writeFile(wav, wavBytes({ words }));
    const { text, hash } = await forecastOf(wav);
    for (const name of ['side.aiff', 'side.flac']) {
      await execa('ffmpeg', ['-v', 'error', '-i', wav, join(folder, name)]);
      const other = await forecastOf(join(folder, name));
      expect(other.container).not.toBe('RIFF');
      expect(other.text).toBe(text);
      expect(other.hash).toBe(hash);
    }
  });
});
