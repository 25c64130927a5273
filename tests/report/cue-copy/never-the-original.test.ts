import { link, mkdir, readdir, readFile, symlink, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { withWav } from '../../../src/analysis/wav-file.js';
import { UsageError } from '../../../src/errors.js';
import { writeCueCopy } from '../../../src/report/cue-copy/write-cue-copy.js';
import { BEXT, MARKS, WANTED, WORDS, withoutNames } from '../../support/cue-copy.js';
import { readForm } from '../../support/riff-chunks.js';
import { temporaryFolder } from '../../support/temporary-folder.js';
import { wavBytes } from '../../support/wav-writer.js';

describe('never onto the original', () => {
  test.each([
    ['its own name', (folder: string) => join(folder, 'side.wav')],
    ['a detour', (folder: string) => join(folder, 'sub', '..', 'side.wav')],
    ['a link', (folder: string) => join(folder, 'link.wav')],
    ['another name of the same file', (folder: string) => join(folder, 'hard.wav')],
  ])('by %s', async (_, target) => {
    const folder = await temporaryFolder();
    const path = join(folder, 'side.wav');
    const bytes = wavBytes({ words: WORDS });
    await writeFile(path, bytes);
    await mkdir(join(folder, 'sub'));
    await symlink('side.wav', join(folder, 'link.wav'));
    await link(path, join(folder, 'hard.wav'));
    await withWav(path, async (wav) => {
      await expect(writeCueCopy(wav, target(folder), MARKS)).rejects.toThrow(UsageError);
    });
    expect(await readFile(path)).toEqual(Buffer.from(bytes));
  });

  test('but over an older copy, and over nothing that is not whole', async () => {
    const folder = await temporaryFolder();
    const [path, copy] = [join(folder, 'side.wav'), join(folder, 'copy.wav')];
    await writeFile(path, wavBytes({ words: WORDS, last: [BEXT] }));
    await writeFile(copy, 'older');
    const copying = withWav(path, async (wav) => {
      await truncate(path, 500);
      await writeCueCopy(wav, copy, MARKS);
    });
    await expect(copying).rejects.toMatchObject({ code: 'changed-while-read' });
    expect(await readFile(copy, 'utf8')).toBe('older');
    expect((await readdir(folder)).sort()).toEqual(['copy.wav', 'side.wav']);
    await withWav(path, (wav) => writeCueCopy(wav, copy, MARKS));
    expect(withoutNames(readForm(await readFile(copy)))).toEqual(WANTED);
  });
});
