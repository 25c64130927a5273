import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filledFolder } from '../support/filled-folder.js';
import { isValid } from '../support/published-schema.js';
import { runFurrow } from '../support/run-furrow.js';
import { longWav, programWav } from '../support/side-files.js';

const LATHE = ['furrow.profile.json', '{ "executes": "fixed", "basePitch": "90um" }'] as const;
const SHEET = JSON.stringify({
  format: 'furrow.sheet/1',
  sides: [{ name: 'Invented', tracks: [{ name: 'One', file: 'side.wav' }] }],
});

async function folderOf() {
  return await filledFolder([
    LATHE,
    ['side.wav', programWav(6, 4)],
    ['album.json', SHEET],
    ['no sound.wav', 'cutting notes, not sound'],
  ]);
}

describe('furrow fit', () => {
  it('writes JSON that its schema describes', async () => {
    const ran = await runFurrow(['fit', '--quiet', '--json', 'side.wav'], {
      cwd: await folderOf(),
    });
    expect(ran).toMatchObject({ exitCode: 0, stderr: '' });
    expect(await isValid('fit', JSON.parse(ran.stdout))).toBe(true);
  });

  it('writes the same of a long side, measured by one thread or by two', async () => {
    const cwd = await filledFolder([LATHE, ['long.wav', longWav(122)]]);
    const fit = ['fit', '--quiet', '--json', '--level', '-12', 'long.wav'];
    const one = await runFurrow([...fit, '--jobs', '1'], { cwd });
    const two = await runFurrow([...fit, '--jobs', '2'], { cwd });
    expect(one).toMatchObject({ exitCode: 0, stderr: '' });
    expect(two.stdout).toBe(one.stdout);
  }, 120_000);

  it('says of a sheet with one track what it says of the file', async () => {
    const cwd = await folderOf();
    const rest = (text: string) => text.slice(text.indexOf(':'));
    const file = await runFurrow(['fit', '--quiet', 'side.wav'], { cwd });
    const sheet = await runFurrow(['fit', '--quiet', 'album.json'], { cwd });
    expect(file.stdout).toContain('FAULT at the planned 0.0 dB by fixed');
    expect(rest(sheet.stdout)).toBe(rest(file.stdout));
  });

  it('cuts the reel that forecast cuts: of the side as it is, without any remedy', async () => {
    const cwd = await folderOf();
    const reelOf = async (command: string) => {
      const ran = await runFurrow([command, '--quiet', '--reel', `${command}.wav`, 'side.wav'], {
        cwd,
      });
      expect(ran).toMatchObject({ exitCode: 0, stderr: '' });
      const files = [`${command}.wav`, `${command}.txt`];
      return await Promise.all(files.map(async (file) => await readFile(join(cwd, file))));
    };
    expect(await reelOf('fit')).toEqual(await reelOf('forecast'));
  });

  it('refuses a reel in the place of what it reads', async () => {
    const cwd = await folderOf();
    const fit = ['fit', '--quiet', '--reel', 'side.wav', 'side.wav'];
    const ran = await runFurrow(fit, { cwd });
    expect(ran.exitCode).toBe(2);
    expect(ran.stderr).toContain('--reel');
  });

  it.each([
    [['--fail-on', 'fault', 'side.wav'], 1, ''],
    [['--fail-on', 'fault', '--level', '-12', 'side.wav'], 0, ''],
    [['--want', '99', 'side.wav'], 2, '--want: found 99'],
    [['side.wav', 'no sound.wav'], 3, 'no sound.wav'],
    [[], 2, 'no path was given'],
  ])('%j gives exit code %d', async (args, code, says) => {
    const ran = await runFurrow(['fit', '--quiet', ...args], { cwd: await folderOf() });
    expect(ran.exitCode).toBe(code);
    expect(ran.stderr).toContain(says);
  });

  it('tries of a saved motion what needs no sound, and says so', async () => {
    const cwd = await folderOf();
    await runFurrow(['forecast', '--quiet', '--save-motion', 'saved', 'side.wav'], { cwd });
    const ran = await runFurrow(['fit', '--quiet', join('saved', 'side.motion')], { cwd });
    expect(ran.exitCode).toBe(0);
    expect(ran.stdout).toContain('Not tried, since the motion was saved');
    expect(ran.stdout).not.toContain('45 rpm');
  });
});
