import { mkdir, readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { execa } from 'execa';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { needProgram } from '../support/outside-program.js';
import { runFurrow } from '../support/run-furrow.js';
import { mixedSides, NARROW_LATHE, programWav } from '../support/side-files.js';

const forecast = (cwd: string, ...args: string[]) =>
  runFurrow(['forecast', '--quiet', ...args], { cwd });

const chapters = z.object({
  chapters: z.array(z.object({ start: z.int(), tags: z.object({ title: z.string() }) })),
});

/** The rows of a CSV by the names of its columns. Read by npm's csv-parse. */
async function rowsOf(path: string): Promise<Record<string, string>[]> {
  return parse(await readFile(path), { columns: true, bom: true });
}

test('every output of one run is there, whole, and says what the JSON says', async () => {
  const cwd = await filledFolder([...mixedSides(), NARROW_LATHE]);
  const flags = ['--table', 't.csv', '--csv', 'out', '--markers', 'out', '--client', 'c.txt'];
  const { stdout, exitCode } = await forecast(cwd, '.', '--json', '--quarters', ...flags);
  const { sides, failures } = forecastSchema.parse(JSON.parse(stdout));
  expect(exitCode).toBe(3);

  const table = await rowsOf(join(cwd, 't.csv'));
  expect(table.map((row) => row['name'] || row['path'])).toEqual(
    mixedSides().map(([name]) => name),
  );
  for (const side of sides) {
    const row = table.find(({ name }) => name === side.name);
    expect(row?.['verdict']).toBe(side.verdict);
    expect(Number(row?.['planEndDiameterMm'])).toBe(side.plan.endDiameterMm);
    const stem = side.name.replace('.wav', '');
    const quarters = await rowsOf(join(cwd, 'out', `${stem}.quarters.csv`));
    expect(quarters.map((line) => Number(line['landUm']))).toEqual(side.quarters?.landUm);
    const markers = await rowsOf(join(cwd, 'out', `${stem}.markers.csv`));
    expect(markers).toHaveLength(side.findings.length + side.hotSpots.length);
    const ids = new Set(markers.map((line) => line['id']));
    expect(side.findings.filter(({ id }) => !ids.has(id))).toEqual([]);
  }
  const row = table.find((line) => line['failureCode'] !== '');
  expect(row).toMatchObject({ path: failures[0]?.path, failureCode: 'not-wav' });
  const client = await readFile(join(cwd, 'c.txt'), 'utf8');
  for (const [name] of mixedSides()) expect(client).toContain(name);
  expect(client).not.toMatch(/\b(land|pitch|overcut|lacquer|stylus)\b/i);
});

test('the cue copy has its marks where the markers are, and the same sound, by ffmpeg and sox', async (context) => {
  needProgram('ffmpeg', context);
  needProgram('sox', context);
  const original = programWav(8, 4);
  const cwd = await filledFolder([['side.wav', original], NARROW_LATHE]);
  const flags = ['--cue', 'marked', '--markers', 'marked', '--brief'];
  expect((await forecast(cwd, 'side.wav', ...flags)).exitCode).toBe(0);
  const copy = join(cwd, 'marked', 'side.wav');
  const shown = await execa('ffprobe', ['-v', 'error', '-show_chapters', '-of', 'json', copy]);
  const marks = chapters.parse(JSON.parse(shown.stdout)).chapters;
  const rows = await rowsOf(join(cwd, 'marked', 'side.markers.csv'));
  expect(rows.length).toBeGreaterThan(3);
  // A chapter reaches to the next: of several at one sample only the place can be compared. A mark
  // at the very end stands on the last sample there is.
  const last = original.length / 4 - 12;
  expect(new Set(marks.map(({ start }) => start))).toEqual(
    new Set(rows.map((row) => Math.min(Number(row['startSample']), last))),
  );
  const sound = async (path: string) =>
    (await execa('sox', [path, '-t', 's16', '-'], { encoding: 'buffer' })).stdout;
  expect(await sound(copy)).toEqual(await sound(join(cwd, 'side.wav')));
  expect(await readFile(join(cwd, 'side.wav'))).toEqual(Buffer.from(original));
});

describe('a path that cannot be written is refused before work, with nothing written', () => {
  test.each([
    [['--table', 'nowhere/t.csv'], /--table: .*t\.csv: the folder .*nowhere is not there/],
    [['--table', 'out'], /--table: .*out: it is a folder, a file is expected/],
    [['--client', 'side.wav'], /--client: .*side\.wav: it is also read/],
    [['--csv', 'side.wav'], /--csv: .*side\.wav is not a folder/],
    [['--cue', '.'], /--cue: .*side\.wav: it is also read/],
    [['--markers', 'a/b/c'], /--markers: .*c: the folder .*b is not there/],
    [['--save-motion', ''], /--save-motion: nothing given: a folder is expected/],
    [['--table', 'furrow.profile.json'], /--table: .*profile\.json: it is also read/],
    [['--files-from', 'l.txt', '--client', 'l.txt'], /--client: .*l\.txt: it is also read/],
  ])('%j', async (flags, expected) => {
    const cwd = await filledFolder([
      ['side.wav', programWav(1)],
      ['l.txt', 'side.wav'],
      NARROW_LATHE,
    ]);
    await mkdir(join(cwd, 'out'));
    const before = await readdir(cwd);
    const { stdout, stderr, exitCode } = await forecast(cwd, 'side.wav', ...flags);
    expect(stderr).toMatch(expected);
    expect({ stdout, exitCode }).toEqual({ stdout: '', exitCode: 2 });
    expect(await readdir(cwd)).toEqual(before);
  });
});

describe('an output that fails later', () => {
  test('is 4, before 3 and 1, and the rest is done', async () => {
    const cwd = await filledFolder([...mixedSides(), NARROW_LATHE]);
    // Source: full(4) of Linux: each write fails for want of space.
    const flags = ['--table', '/dev/full', '--client', 'c.txt', '--json', '--fail-on', 'note'];
    const { stdout, stderr, exitCode } = await forecast(cwd, '.', ...flags);
    expect(exitCode).toBe(4);
    expect(stderr).toMatch(/^furrow: \/dev\/full: cannot be written, the disk is full/m);
    expect(forecastSchema.parse(JSON.parse(stdout)).sides).toHaveLength(6);
    expect(await readFile(join(cwd, 'c.txt'), 'utf8')).toContain('10 last.wav');
  });
});
