// Copies with marks, read by ffmpeg (5.1.9 when this was written), whose reader of WAV gives cue
// points as chapters and labels as their titles, and by sox, whose reader walks all chunks.
import { spawnSync } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { withWav } from '../../src/analysis/wav-file.js';
import { forecastFile } from '../../src/forecast-side.js';
import { resolveProfile } from '../../src/profile/resolve-profile.js';
import { hotSpotMarks } from '../../src/report/cue-copy/hot-spot-marks.js';
import { writeCueCopy } from '../../src/report/cue-copy/write-cue-copy.js';
import { forecastText } from '../support/forecast-text.js';
import { needProgram } from '../support/outside-program.js';
import { readForm } from '../support/riff-chunks.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { ascii, chunk, joined, type WavOptions, wavBytes } from '../support/wav-writer.js';

const RATE = 44_100;
const MARKS = [
  { frame: 12_345, length: 0, label: 'land 4.8 µm', note: 'A note.' },
  { frame: 1, length: 700, label: 'overcut', note: '' },
  { frame: 88_198, length: 1, label: 'lift', note: 'Another one, of an odd length' },
];
/** As they are to be read, in time order. */
const WANTED = [
  { start: 1, title: 'overcut' },
  { start: 12_345, title: 'land 4.8 um' },
  { start: 88_198, title: 'lift' },
];

const chapters = z.object({
  chapters: z.array(
    z.object({
      time_base: z.literal(`1/${RATE}`),
      start: z.int(),
      tags: z.object({ title: z.string() }),
    }),
  ),
});

/** Two seconds of a wobbling tone, apart in the two channels. */
const TONE = Array.from({ length: 4 * RATE }, (_, word) =>
  Math.round(9000 * Math.sin((word * (200 + (word % 2) * 13 + word / 9000)) / RATE)),
);
const BEXT = chunk('bext', new Uint8Array(602));
const INFO = chunk('LIST', joined([ascii('INFO'), chunk('IART', ascii('none'))]));

const VARIANTS: readonly (readonly [name: string, options: Partial<WavOptions>])[] = [
  ['RIFF, 16 bit', {}],
  [
    'RIFF, 24 bit, EXTENSIBLE, other chunks around',
    { bitDepth: 24, extensible: true, first: [BEXT], last: [INFO] },
  ],
  [
    'RIFF, 32-bit float',
    { encoding: 'float', bitDepth: 32, words: TONE.map((word) => word / 2 ** 15) },
  ],
  [
    'RIFF of an odd size, mono, 8 bit',
    { bitDepth: 8, channels: 1, words: TONE.slice(0, 88_201).map((word) => word >> 8) },
  ],
  ['RF64, 16 bit', { container: 'RF64' }],
  ['BW64, 24 bit', { container: 'BW64', bitDepth: 24 }],
];

/** A file of a variant and its copy with MARKS. */
async function fileAndCopy(options: Partial<WavOptions>): Promise<readonly [string, string]> {
  const folder = await temporaryFolder();
  const [path, copy] = [join(folder, 'side.wav'), join(folder, 'copy.wav')];
  await writeFile(path, wavBytes({ words: TONE, ...options }));
  await withWav(path, (wav) => writeCueCopy(wav, copy, MARKS));
  return [path, copy];
}

function run(program: string, ...args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(program, args, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${program}: ${stderr}`);
  return stdout;
}

const soundOf = (path: string): string =>
  run('ffmpeg', '-v', 'error', '-i', path, '-map', '0:a', '-c', 'copy', '-f', 'md5', '-');

describe.each(VARIANTS)('%s', (_, options) => {
  test('ffprobe reads each mark at its frame with its label', async (context) => {
    needProgram('ffmpeg', context);
    const [, copy] = await fileAndCopy(options);
    const told = run('ffprobe', '-v', 'error', '-show_chapters', '-of', 'json', copy);
    const found = chapters.parse(JSON.parse(told)).chapters;
    expect(found.map(({ start, tags }) => ({ start, title: tags.title }))).toEqual(WANTED);
  });

  test('ffmpeg hears the same sound in it, bit for bit', async (context) => {
    needProgram('ffmpeg', context);
    const [path, copy] = await fileAndCopy(options);
    expect(soundOf(copy)).toBe(soundOf(path));
    expect(soundOf(copy)).toMatch(/^MD5=[0-9a-f]{32}/);
  });

  test('furrow forecasts the copy to the same bytes', async () => {
    const [path, copy] = await fileAndCopy(options);
    const request = { levelDb: 0, planner: 'turn-ahead' } as const;
    const settings = resolveProfile();
    const [original, again] = [
      await forecastFile(path, settings, request),
      await forecastFile(copy, settings, request),
    ];
    expect(forecastText({ ...again, name: original.name })).toBe(forecastText(original));
  });
});

// sox 14.4.2 reads neither RF64 nor BW64.
test.for(VARIANTS.filter(([name]) => name.startsWith('RIFF')))(
  '%s: sox reads all of it and warns of nothing that it does not warn of in the original',
  async ([, options], context) => {
    needProgram('sox', context);
    const [path, copy] = await fileAndCopy(options);
    const stat = (file: string): string => {
      const { stderr } = spawnSync('sox', ['-V2', file, '-n', 'stat'], { encoding: 'utf8' });
      return stderr.replaceAll(file, 'the file');
    };
    expect(stat(copy)).toBe(stat(path));
    expect(stat(copy)).toMatch(/Samples read: +\d{5}/);
  },
);

test('a forecast marks its own hot spots, and the last chapter is no later than the sound', async (context) => {
  needProgram('ffmpeg', context);
  const [path] = await fileAndCopy({});
  const copy = `${path}.copy.wav`;
  const file = await forecastFile(path, resolveProfile(), { levelDb: 6, planner: 'turn-ahead' });
  const marks = hotSpotMarks(file);
  expect(marks.length).toBeGreaterThan(1);
  await withWav(path, (wav) => writeCueCopy(wav, copy, marks));
  const told = run('ffprobe', '-v', 'error', '-show_chapters', '-of', 'json', copy);
  const starts = chapters.parse(JSON.parse(told)).chapters.map(({ start }) => start);
  expect(starts).toEqual(marks.map(({ frame }) => frame));
  expect(readForm(await readFile(copy)).after).toHaveLength(0);
});
