// The side sheet of the examples, with files as long as those that the demo plays, but silent, which
// is quicker.
import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { runInProcess } from '../support/run-in-process.js';
import { temporaryFolder } from '../support/temporary-folder.js';
import { chunk, formatChunk, riff } from '../support/wav-writer.js';

const EXAMPLES = fileURLToPath(new URL('../../examples/', import.meta.url));

test('the invented album fits its files, and shows what a sheet can do', async () => {
  const folder = await temporaryFolder();
  await mkdir(join(folder, 'demo-sides'));
  for (const [name, sampleRate, seconds] of [
    ['tin-heron-a-rough-mix.wav', 44_100, 300],
    ['tin-heron-b-calm-mix.wav', 48_000, 200],
  ] as const) {
    const silence = chunk('data', new Uint8Array(2 * 3 * sampleRate * seconds));
    const bytes = riff([formatChunk({ bitDepth: 24, sampleRate }), silence]);
    await writeFile(join(folder, 'demo-sides', name), bytes);
  }
  const sheet = join(folder, 'tin-heron.sheet.json');
  await copyFile(join(EXAMPLES, 'tin-heron.sheet.json'), sheet);
  const profile = join(EXAMPLES, 'furrow.profile.json');
  const ran = await runInProcess(['side', '--quiet', '--json', '--profile', profile, sheet]);
  expect([ran.exitCode, ran.stderr]).toEqual([0, '']);
  const { sides } = forecastSchema.parse(JSON.parse(ran.stdout));
  expect(
    sides.map(({ name, levelDb, durationSeconds }) => [name, levelDb, durationSeconds]),
  ).toEqual([
    ['A', -3, 183.5],
    ['B', -4, 157.5],
  ]);
  // Tracks of 48 and 44.1 kHz meet in one side; the other has its filter in one track only.
  expect(sides[0]?.sources.map(({ sampleRate }) => sampleRate)).toEqual([48_000, 44_100]);
  expect(sides[1]?.setup.ellipticalHz).toBe(300);
  expect(sides.flatMap(({ tracks = [] }) => tracks.map(({ name }) => name))).toEqual([
    'Harbour Steps',
    'Low Tide Engine',
    'Kettle Hymn',
    'Salt Choir',
  ]);
});
