import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filledFolder } from '../support/filled-folder.js';
import { runFurrow } from '../support/run-furrow.js';
import { programWav } from '../support/side-files.js';

const LATHE = ['furrow.profile.json', '{ "executes": "fixed", "basePitch": "90um" }'] as const;

describe('furrow fit --html', () => {
  it('writes a page that says what the text says is to be done', async () => {
    const cwd = await filledFolder([LATHE, ['side.wav', programWav(4, 4)]]);
    const ran = await runFurrow(['fit', '--quiet', '--html', 'side.html', 'side.wav'], { cwd });
    expect(ran).toMatchObject({ exitCode: 0, stderr: '' });
    const page = await readFile(join(cwd, 'side.html'), 'utf8');
    const told = ran.stdout.replaceAll(/\s+/g, ' ');
    const [, sentence = ''] = /class="fit-sentence">(.*?) <a/.exec(page) ?? [];
    expect(sentence.length).toBeGreaterThan(20);
    // A terminal that is not known to take Unicode gets ASCII.
    expect(told).toContain(sentence.replaceAll('µ', 'u'));
  });

  it('writes a page a side into a folder, and an index that says what would mend each', async () => {
    const files = ['one.wav', 'two.wav'].map((name) => [name, programWav(3, 4)] as const);
    const cwd = await filledFolder([LATHE, ...files, ['no sound.wav', 'cutting notes']]);
    const ran = await runFurrow(['fit', '--quiet', '--html', 'pages/', '.'], { cwd });
    expect(ran.exitCode).toBe(3);
    expect((await readdir(join(cwd, 'pages'))).toSorted()).toEqual([
      'index.html',
      'one.html',
      'two.html',
    ]);
    const index = await readFile(join(cwd, 'pages', 'index.html'), 'utf8');
    expect(index.match(/<td class="left mends">/g)?.length).toBe(2);
    expect(index).toContain('no sound.wav');
  });
});
