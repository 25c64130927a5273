import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { isValid } from '../support/published-schema.js';
import { runFurrow } from '../support/run-furrow.js';
import { NARROW_LATHE, programWav } from '../support/side-files.js';

const NAME = 'side.wav';

async function forecast(cwd: string, ...flags: string[]) {
  return await runFurrow(['forecast', NAME, ...flags], { cwd });
}

async function sideOf(cwd: string) {
  const { stdout } = await forecast(cwd, '--json', '--quiet');
  const document: unknown = JSON.parse(stdout);
  expect(await isValid('forecast', document)).toBe(true);
  const [side] = forecastSchema.parse(document).sides;
  if (side === undefined) throw new Error('no side');
  return side;
}

/** Accepts every finding of the side that is no note, one by one as a user does. */
async function acceptAll(cwd: string): Promise<number> {
  const { findings } = await sideOf(cwd);
  const grave = findings.filter(({ severity }) => severity !== 'note');
  for (const { id, atSeconds } of grave) {
    const at = atSeconds === null ? [] : ['--at', String(atSeconds)];
    const flags = ['--id', id, ...at, '--reason', 'heard on the test cut'];
    const ran = await runFurrow(['accept', NAME, '--quiet', ...flags], { cwd });
    expect(ran).toMatchObject({ exitCode: 0, stderr: '' });
  }
  return grave.length;
}

test('what is accepted stays told with its reason, and counts for nothing until the sound changes', async () => {
  const cwd = await filledFolder([[NAME, programWav(6, 4)], NARROW_LATHE]);
  expect((await forecast(cwd, '--quiet', '--fail-on', 'fault')).exitCode).toBe(1);
  const count = await acceptAll(cwd);
  expect(count).toBeGreaterThan(0);

  const accepted = await forecast(cwd, '--fail-on', 'caution', '--details');
  expect(accepted.exitCode).toBe(0);
  expect(accepted.stdout).toMatch(/^ {2}CLEAR for fixed pitch and depth/m);
  expect(accepted.stdout.replaceAll(/\s+/g, ' ')).toContain(`; ${count} accepted.`);
  expect(accepted.stdout.replaceAll(/\s+/g, ' ')).toContain('Accepted: heard on the test cut');
  const side = await sideOf(cwd);
  expect(side.verdict).toBe('clear');
  expect(side.findings.filter((finding) => finding.accepted !== null)).toHaveLength(count);

  const path = join(cwd, NAME);
  const changed = await readFile(path);
  changed[changed.length - 2] = (changed[changed.length - 2] ?? 0) ^ 1;
  await writeFile(path, changed);
  const voided = await forecast(cwd, '--fail-on', 'fault');
  expect(voided.exitCode).toBe(1);
  expect(voided.stdout).toMatch(/^ {2}FAULT/m);
  const said =
    /^furrow: side\.wav: (\d+) acceptances? (?:is|are) void \(.*\): the sound is not the one that was accepted$/gm;
  expect([...voided.stderr.matchAll(said)].map(([, number]) => Number(number))).toEqual([count]);
  expect(voided.stdout.replaceAll(/\s+/g, ' ')).toMatch(
    /Void acceptances, since the sound is not the one that was accepted: .* \(heard on the test cut\)/,
  );
  const after = await sideOf(cwd);
  expect(after.voidAcceptances).toHaveLength(count);
  expect(after.voidAcceptances.map(({ why }) => why)).toContain('audio-changed');
}, 90_000);

test('another tag in the file is not another sound', async () => {
  const bytes = programWav(6, 4);
  const cwd = await filledFolder([[NAME, bytes], NARROW_LATHE]);
  expect(await acceptAll(cwd)).toBeGreaterThan(0);
  const tag = Buffer.from('LIST\x0e\0\0\0INFOICMT\x02\0\0\0a\0', 'latin1');
  const tagged = Buffer.concat([bytes, tag]);
  tagged.writeUInt32LE(tagged.length - 8, 4);
  await writeFile(join(cwd, NAME), tagged);
  expect((await sideOf(cwd)).verdict).toBe('clear');
}, 90_000);

test.each([
  ['{ "format": "furrow.accepted/2", "accepted": [] }', /furrow\.accepted\.json: format: found/],
  ['{ "accepted": [', /furrow\.accepted\.json/],
])('a list that is wrong, %s, is wrong usage before any work', async (text, expected) => {
  const cwd = await filledFolder([
    [NAME, programWav(1)],
    ['furrow.accepted.json', text],
  ]);
  const { stdout, stderr, exitCode } = await forecast(cwd);
  expect(stderr).toMatch(expected);
  expect({ stdout, exitCode }).toEqual({ stdout: '', exitCode: 2 });
});
