import { chmod, link, mkdir, readdir, readFile, stat, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { beforeAll, describe, expect, test } from 'vitest';
import { UsageError } from '../../src/errors.js';
import { checkOutputFile, checkOutputFolder } from '../../src/report/check-output.js';
import { compileModule } from '../support/compile-module.js';
import { temporaryFolder } from '../support/temporary-folder.js';

describe('the path of a file that will be written', () => {
  test('is accepted where a file can be made, and nothing is made yet', async () => {
    const folder = await temporaryFolder();
    await checkOutputFile(join(folder, 'table.csv'));
    expect(await readdir(folder)).toEqual([]);
  });

  test('is accepted where a file can be replaced, which stays as it is', async () => {
    const path = join(await temporaryFolder(), 'table.csv');
    await writeFile(path, 'old');
    await checkOutputFile(path);
    expect(await readFile(path, 'utf8')).toBe('old');
  });

  test.skipIf(process.platform !== 'linux')('may be a device', async () => {
    await checkOutputFile('/dev/null');
  });

  test.each([
    ['empty', '', 'nothing given: a file name is expected'],
    ['a folder', 'made', 'it is a folder, a file is expected'],
    ['a folder by its name', 'new/', 'it is a folder, a file is expected'],
    ['in a missing folder', 'gone/table.csv', 'gone is not there'],
    ['below a file', 'old.csv/table.csv', 'a part of the path is not a folder'],
    ['too long', 'x'.repeat(300), 'the name is too long'],
    ['a link into a missing folder', 'link.csv', 'gone is not there'],
  ])('is refused before work begins where it is %s', async (_, name, reason) => {
    const folder = await temporaryFolder();
    await mkdir(join(folder, 'made'));
    await writeFile(join(folder, 'old.csv'), 'old');
    await symlink('gone/table.csv', join(folder, 'link.csv'));
    const path = name === '' ? '' : `${folder}/${name}`;
    const refused = checkOutputFile(path, { option: '--table' });
    await expect(refused).rejects.toThrow(UsageError);
    await expect(refused).rejects.toThrow(reason);
    await expect(refused).rejects.toThrow(/^--table: /);
  });

  test('is refused where it is one of the inputs, by whatever name', async () => {
    const folder = await temporaryFolder();
    const input = join(folder, 'side.wav');
    await writeFile(input, 'sound');
    await symlink('side.wav', join(folder, 'soft.wav'));
    await link(input, join(folder, 'hard.wav'));
    for (const name of ['side.wav', './side.wav', 'soft.wav', 'hard.wav']) {
      const refused = checkOutputFile(`${folder}/${name}`, { inputs: ['missing.wav', input] });
      await expect(refused).rejects.toThrow(`it is also read, as ${input}`);
    }
    await writeFile(join(folder, 'other.wav'), 'sound');
    await checkOutputFile(join(folder, 'other.wav'), { inputs: [input] });
  });

  test('shows control characters instead of sending them to a terminal', async () => {
    const path = join(await temporaryFolder(), 'gone\u001b[2J', 'table.csv');
    await expect(checkOutputFile(path)).rejects.toThrow('gone\\u{1b}[2J is not there');
  });
});

describe('the path of a folder that will be written into', () => {
  test('is made where only itself is missing, and accepted as it is where it is there', async () => {
    const path = join(await temporaryFolder(), 'new');
    await checkOutputFolder(path);
    expect((await stat(path)).isDirectory()).toBe(true);
    await writeFile(join(path, 'kept.csv'), 'old');
    await checkOutputFolder(path);
    expect(await readdir(path)).toEqual(['kept.csv']);
  });

  test.each([
    ['empty', '', 'nothing given: a folder is expected'],
    ['a file', 'old.csv', 'old.csv is not a folder'],
    ['in a missing folder', 'gone/new', 'gone is not there'],
    ['below a file', 'old.csv/new', 'a part of the path is not a folder'],
  ])('is refused before work begins where it is %s', async (_, name, reason) => {
    const folder = await temporaryFolder();
    await writeFile(join(folder, 'old.csv'), 'old');
    const refused = checkOutputFolder(name === '' ? '' : `${folder}/${name}`, { option: '--csv' });
    await expect(refused).rejects.toThrow(UsageError);
    await expect(refused).rejects.toThrow(reason);
    expect(await readdir(folder)).toEqual(['old.csv']);
  });
});

describe('what may not be written to', () => {
  /** Permissions do not bind root, so its place is taken by a user who owns nothing. */
  const nobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {};
  let compiled = '';
  beforeAll(async () => {
    const { path, remove } = await compileModule('report/check-output');
    compiled = path;
    return remove;
  });

  async function refusalOf(check: string, path: string): Promise<string> {
    const script = `const checks = await import(process.argv[1]);
      await checks[process.argv[2]](process.argv[3]).catch((error) => console.log(error.message));`;
    const args = ['--input-type=module', '-e', script, compiled, check, path];
    return (await execa(process.execPath, args, { ...nobody, cwd: '/' })).stdout;
  }

  test('is refused: a file, the folder of a new one, a folder to write into', async () => {
    const folder = await temporaryFolder();
    await chmod(folder, 0o755);
    const locked = join(folder, 'locked');
    const open = join(folder, 'open');
    await mkdir(locked);
    await mkdir(open);
    await chmod(open, 0o777);
    await writeFile(join(open, 'table.csv'), 'old');
    await chmod(join(open, 'table.csv'), 0o444);
    await chmod(locked, 0o555);
    const refused = 'writing there is not permitted';
    expect(await refusalOf('checkOutputFile', join(open, 'table.csv'))).toContain(refused);
    expect(await refusalOf('checkOutputFile', join(locked, 'new.csv'))).toContain(refused);
    expect(await refusalOf('checkOutputFolder', locked)).toContain(refused);
    expect(await refusalOf('checkOutputFolder', join(locked, 'new'))).toContain(refused);
    expect(await refusalOf('checkOutputFile', join(open, 'new.csv'))).toBe('');
    expect(await refusalOf('checkOutputFolder', join(open, 'new'))).toBe('');
  });
});
