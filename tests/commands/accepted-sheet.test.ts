import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'jsonc-parser';
import { expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { isValid } from '../support/published-schema.js';
import { runFurrow } from '../support/run-furrow.js';
import { NARROW_LATHE, programWav } from '../support/side-files.js';

const SHEET = 'album.json';

function sheetOf(gapSeconds: number, sides = ['A', 'B']): string {
  const tracks = [{ file: 'side.wav' }, { file: 'side.wav', gapSeconds, trimDb: -1 }];
  return JSON.stringify({
    format: 'furrow.sheet/1',
    sides: sides.map((name) => ({ name, levelDb: 1, tracks })),
  });
}

async function albumFolder(...sheets: string[]): Promise<string> {
  const [sheet = sheetOf(2)] = sheets;
  return await filledFolder([['side.wav', programWav(6, 4)], NARROW_LATHE, [SHEET, sheet]]);
}

async function sidesOf(cwd: string) {
  const { stdout } = await runFurrow(['side', SHEET, '--json', '--quiet'], { cwd });
  return forecastSchema.parse(JSON.parse(stdout)).sides;
}

/** Accepts all that is grave on side A, one by one. */
async function acceptOfA(cwd: string): Promise<number> {
  const [a] = await sidesOf(cwd);
  const grave = (a?.findings ?? []).filter(({ severity }) => severity !== 'note');
  for (const { id, atSeconds } of grave) {
    const at = atSeconds === null ? [] : ['--at', String(atSeconds)];
    const flags = ['--side', 'A', '--id', id, ...at, '--reason', 'heard on the test cut'];
    const ran = await runFurrow(['accept', SHEET, '--quiet', ...flags], { cwd });
    expect(ran).toMatchObject({ exitCode: 0, stderr: '' });
  }
  return grave.length;
}

test('what is accepted of a side of a sheet counts for nothing there, until its sound changes', async () => {
  const cwd = await albumFolder();
  const count = await acceptOfA(cwd);
  expect(count).toBeGreaterThan(0);
  const [a, b] = await sidesOf(cwd);
  expect(a?.verdict).toBe('clear');
  expect(a?.findings.filter(({ accepted }) => accepted !== null).length).toBe(count);
  expect(b?.verdict).toBe('fault');
  const list: unknown = parse(await readFile(join(cwd, 'furrow.accepted.json'), 'utf8'));
  expect(await isValid('accepted', list)).toBe(true);
  const sides = JSON.stringify(list).match(/"side":"[^"]*"/g);
  expect(sides).toEqual(Array.from({ length: count }, () => '"side":"album.json: A"'));

  // Another gap is another program.
  await writeFile(join(cwd, SHEET), sheetOf(2.5));
  const voided = await runFurrow(['side', SHEET, '--fail-on', 'fault'], { cwd });
  expect(voided.exitCode).toBe(1);
  expect(voided.stderr).toMatch(new RegExp(`A: ${count} acceptances? (is|are) void`));
}, 60_000);

test.each([
  [[SHEET], 'found 2 sides in album.json, expected one of A, B'],
  [[SHEET, '--side', 'C'], 'found "C" in album.json, expected one of A, B'],
  [['side.wav', '--side', 'A'], 'found it with side.wav, expected a side sheet'],
])('which side is meant must be said: %j', async (args, says) => {
  const flags = ['--quiet', '--id', 'overcut', '--reason', 'kisses'];
  const ran = await runFurrow(['accept', ...args, ...flags], { cwd: await albumFolder() });
  expect(ran.exitCode).toBe(2);
  expect(ran.stderr).toContain(`--side: ${says}`);
});

test('the only side of a sheet needs no name, and a track that is missing is a failure', async () => {
  const cwd = await albumFolder(sheetOf(2, ['One']).replace('"side.wav"', '"gone.wav"'));
  const flags = ['--quiet', '--id', 'overcut', '--reason', 'kisses'];
  const gone = await runFurrow(['accept', SHEET, ...flags], { cwd });
  expect(gone.exitCode).toBe(3);
  expect(gone.stderr).toContain('gone.wav');
  await writeFile(join(cwd, SHEET), sheetOf(2, ['One']));
  const none = await runFurrow(['accept', SHEET, ...flags, '--at', '0:00.1'], { cwd });
  expect(none.exitCode).toBe(2);
  expect(none.stderr).not.toContain('--side');
});
