import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forecastSchema, lineSchema } from '../../src/report/forecast-schema.js';
import { inventedProgram, RATE } from '../support/invented-program.js';
import { runInProcess } from '../support/run-in-process.js';
import { writeWav } from '../support/sheet-side.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const PCM = { encoding: 'pcm', bitDepth: 16, channels: 2, sampleRate: RATE } as const;
const QUIET = ['side', '--no-discovery', '--quiet'];
const track = (name: string) => ({ file: 'song.wav', name });

/** A sheet whose sides have tracks of the same sound, by name. */
async function sheetWith(folder: string, name: string, sides: readonly (readonly string[])[]) {
  await writeWav(folder, 'song.wav', inventedProgram(8, 4), PCM);
  const path = join(folder, name);
  const laid = sides.map((names, at) => ({ name: `Side ${at + 1}`, tracks: names.map(track) }));
  await writeFile(path, JSON.stringify({ format: 'furrow.sheet/1', sides: laid }));
  return path;
}

const UNBALANCED = [['Ebb', 'Flood', 'Neap'], ['Slack']];

describe('unbalanced sides of a sheet', () => {
  test('are said so once, behind the last side, with where to part them', async () => {
    const folder = await temporaryFolder();
    const sheet = await sheetWith(folder, 'album.json', UNBALANCED);
    const { stdout } = await runInProcess([...QUIET, sheet]);
    const text = stdout.replaceAll(/\s+/g, ' ');
    expect(text.match(/The sides are unbalanced/g)?.length).toBe(1);
    expect(text).toMatch(/With a new side from “Neap” on, the fullest takes \d+\.\d mm\./);
    expect(text.indexOf('unbalanced')).toBeGreaterThan(text.indexOf('2 sides'));
  });

  test('are in the JSON with what each takes, and what the best split would', async () => {
    const folder = await temporaryFolder();
    const sheet = await sheetWith(folder, 'album.json', UNBALANCED);
    const { stdout } = await runInProcess([...QUIET, '--json', sheet]);
    const { sides, splits } = forecastSchema.parse(JSON.parse(stdout));
    const [split, ...others] = splits ?? [];
    expect(others).toEqual([]);
    expect(split?.sheet).toBe(sheet);
    expect(split?.tracksPerSide).toEqual([2, 2]);
    expect(split?.radiusUsedMm).toEqual(sides.map(({ machine }) => machine.radiusUsedMm));
    // Three tracks of one sound and one: the fuller of two and two is two thirds of three.
    const full = split?.radiusUsedMm[0] ?? 0;
    expect(split?.fullestMm).toBeWithin((2 / 3) * full, 0.02 * full, 0);
    const lines = (await runInProcess([...QUIET, '--ndjson', sheet])).stdout.trimEnd().split('\n');
    const last = lineSchema.parse(JSON.parse(lines.at(-1) ?? ''));
    expect(last).toMatchObject({ type: 'summary', splits: [split] });
  });

  test('balanced ones, and a sheet of which a side is missing, are not spoken of', async () => {
    const folder = await temporaryFolder();
    const balanced = await sheetWith(folder, 'even.json', [['Ebb'], ['Flood']]);
    const broken = await sheetWith(folder, 'broken.json', UNBALANCED);
    const sides = [
      { name: 'A', tracks: UNBALANCED[0]?.map(track) },
      { name: 'B', tracks: [track('Slack')] },
      { name: 'C', tracks: [{ file: 'missing.wav' }] },
    ];
    await writeFile(broken, JSON.stringify({ format: 'furrow.sheet/1', sides }));
    for (const path of [balanced, broken]) {
      const { stdout } = await runInProcess([...QUIET, '--json', path]);
      expect(forecastSchema.parse(JSON.parse(stdout)).splits).toBeUndefined();
      expect((await runInProcess([...QUIET, path])).stdout).not.toContain('unbalanced');
    }
  });
});
