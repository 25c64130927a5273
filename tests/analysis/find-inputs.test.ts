import { mkdir, symlink, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, onTestFinished, test } from 'vitest';
import { type FindOptions, findInputs } from '../../src/analysis/find-inputs.js';
import { byNaturalOrder } from '../../src/analysis/natural-order.js';
import { UsageError } from '../../src/errors.js';
import { temporaryFolder } from '../support/temporary-folder.js';

async function folderOf(...files: readonly string[]): Promise<FindOptions & { cwd: string }> {
  const cwd = await temporaryFolder();
  for (const file of files) {
    await mkdir(dirname(join(cwd, file)), { recursive: true });
    await writeFile(join(cwd, file), '');
  }
  return { cwd };
}

/** One line an input: the path, or what is wrong with it. */
async function found(args: readonly string[], options: FindOptions): Promise<string[]> {
  const inputs = await findInputs(args, options);
  return inputs.map((input) => {
    if (input.kind === 'file') return input.path;
    if (input.kind === 'empty-folder') return `${input.path} (empty)`;
    return `${input.error.path} (${input.error.code})`;
  });
}

describe('files and folders', () => {
  test('files come in the order they are named, whatever their extension', async () => {
    const options = await folderOf('b.wav', 'a.wav', 'side.motion');
    const args = ['b.wav', 'side.motion', 'a.wav'];
    expect(await found(args, options)).toEqual(args);
  });

  test('a folder gives its WAV files, deep, 2 before 10, whatever the case of .wav', async () => {
    const options = await folderOf(
      'lp/10.wav',
      'lp/2.WAV',
      'lp/1.wav',
      'lp/notes.txt',
      'lp/side 10/1.wav',
      'lp/side 9/1.Wav',
    );
    expect(await found(['lp'], options)).toEqual([
      'lp/1.wav',
      'lp/2.WAV',
      'lp/10.wav',
      'lp/side 9/1.Wav',
      'lp/side 10/1.wav',
    ]);
  });

  test('a folder gives its saved motions too, but of a side that is there as both only the WAV', async () => {
    const options = await folderOf(
      'lp/1.wav',
      'lp/1.motion',
      'lp/2.motion',
      'lp/3.WAV',
      'lp/3.WAV.motion',
      'lp/4.Motion',
      'lp/5.wav/6.motion',
      'lp/5.motion',
      'lp/7/1.motion',
    );
    const sides = [
      'lp/1.wav',
      'lp/2.motion',
      'lp/3.WAV',
      'lp/4.Motion',
      'lp/5.motion',
      'lp/5.wav/6.motion',
      'lp/7/1.motion',
    ];
    expect(await found(['lp'], options)).toEqual(sides);
    expect(new Set(await found(['lp/**'], options))).toEqual(new Set(sides));
  });

  test('a folder gives AIFF and FLAC files as well, whatever their case; two of one name are two', async () => {
    const options = await folderOf(
      'lp/1.aif',
      'lp/2.AIFF',
      'lp/3.aifc',
      'lp/4.Flac',
      'lp/5.flac',
      'lp/5.wav',
      'lp/6.aiff.motion',
      'lp/6.aiff',
      'lp/7.flac',
      'lp/7.motion',
      'lp/8.mp3',
      'lp/9.aifff',
    );
    expect(await found(['lp'], options)).toEqual([
      'lp/1.aif',
      'lp/2.AIFF',
      'lp/3.aifc',
      'lp/4.Flac',
      'lp/5.flac',
      'lp/5.wav',
      'lp/6.aiff',
      'lp/7.flac',
    ]);
  });

  test('a motion beside its WAV is taken when it is named, or matched without it', async () => {
    const options = await folderOf('1.wav', '1.motion', '2.wav', '2.wav.motion');
    expect(await found(['1.motion', '1.wav'], options)).toEqual(['1.motion', '1.wav']);
    expect(await found(['*.motion'], options)).toEqual(['1.motion', '2.wav.motion']);
    expect(await found(['*'], options)).toEqual(['1.wav', '2.wav']);
  });

  test.each(['lp', 'lp/', './lp', '../$/lp'])('the paths of %s stay relative', async (given) => {
    const options = await folderOf('lp/1.wav');
    const argument = given.replace('$', options.cwd.split('/').at(-1) ?? '');
    const [path] = await found([argument], options);
    expect(path).toBe(join(argument, '1.wav'));
  });

  test('the working folder itself adds nothing to the names in it', async () => {
    expect(await found(['.'], await folderOf('1.wav'))).toEqual(['1.wav']);
  });

  test('an absolute folder gives absolute paths', async () => {
    const { cwd } = await folderOf('1.wav');
    expect(await found([cwd], { cwd: '/' })).toEqual([join(cwd, '1.wav')]);
  });

  test('hidden files and folders are left out of a folder, but taken when named', async () => {
    const options = await folderOf('lp/._1.wav', 'lp/.old/2.wav', 'lp/1.wav');
    expect(await found(['lp'], options)).toEqual(['lp/1.wav']);
    expect(await found(['lp/._1.wav', 'lp/.old'], options)).toEqual([
      'lp/._1.wav',
      'lp/.old/2.wav',
    ]);
  });

  test('a folder named .wav is a folder; an empty one is told apart from a missing one', async () => {
    const options = await folderOf('lp.wav/1.wav', 'notes/a.txt');
    const args = ['lp.wav', 'notes', 'nowhere', 'nowhere.wav', 'notes/a.txt/b'];
    expect(await found(args, options)).toEqual([
      'lp.wav/1.wav',
      'notes (empty)',
      'nowhere (not-found)',
      'nowhere.wav (not-found)',
      'notes/a.txt/b (not-found)',
    ]);
  });

  test('a folder without permission is a failure, and the rest goes on', async () => {
    const options = await folderOf('lp/1.wav', 'lp/3.wav');
    await mkdir(join(options.cwd, 'lp/2'), { mode: 0o000 });
    // The superuser may read anything, so it becomes somebody else for a moment.
    if (process.geteuid?.() === 0) {
      const { chown } = await import('node:fs/promises');
      await chown(options.cwd, 65_534, 65_534);
      process.seteuid?.(65_534);
      onTestFinished(() => process.seteuid?.(0));
    }
    expect(await found(['lp', 'lp/*/*.wav'], options)).toEqual([
      'lp/1.wav',
      'lp/2 (no-permission)',
      'lp/3.wav',
      'lp/*/*.wav (no-permission)',
    ]);
  });
});

describe('links', () => {
  /** A folder `lp` with links in and out of it; `else` holds what they lead to. */
  async function folderOfLinks() {
    const options = await folderOf('lp/1.wav', 'else/2.wav', 'else/deep/3.wav', 'lp/in/4.wav');
    const link = (to: string, name: string) => symlink(to, join(options.cwd, name));
    await link('1.wav', 'lp/to file.wav');
    await link('in', 'lp/to folder');
    await link('..', 'lp/in/round');
    await link('gone', 'lp/to nothing.wav');
    await link('gone', 'lp/to nothing.txt');
    await link('../else/2.wav', 'lp/x out.wav');
    await link('../else', 'lp/x out');
    return options;
  }

  test('inside the folder: to files are taken, to folders not followed, to nothing left to the reader', async () => {
    const inside = ['lp/1.wav', 'lp/in/4.wav', 'lp/to file.wav', 'lp/to nothing.wav'];
    const refused = ['lp/x out (link-outside)', 'lp/x out.wav (link-outside)'];
    const options = await folderOfLinks();
    expect(await found(['lp'], options)).toEqual([...inside, ...refused]);
    expect(await found(['lp/**/*.wav'], options)).toEqual([...inside, refused[1]]);
    expect(await found(['lp/x*'], options)).toEqual(refused);
  });

  test('out of the folder are followed where that is asked for', async () => {
    const options = { ...(await folderOfLinks()), follow: true };
    const all = [
      'lp/1.wav',
      'lp/in/4.wav',
      'lp/to file.wav',
      'lp/to nothing.wav',
      'lp/x out/2.wav',
      'lp/x out/deep/3.wav',
      'lp/x out.wav',
    ];
    expect(await found(['lp'], options)).toEqual(all);
    expect(await found(['lp/**/*.wav'], options)).toEqual(all);
  });

  test('that lead back to what holds them are refused, and what many lead to is walked once', async () => {
    const options = { ...(await folderOf('lp/1.wav', 'lp/2/2.wav', 'else/3.wav')), follow: true };
    const link = (to: string, name: string) => symlink(to, join(options.cwd, name));
    for (const name of ['a', 'b', 'c']) {
      await link('../../else', `lp/2/${name}`);
      await link('../lp', `else/in ${name}`);
      await link(options.cwd, `else/up ${name}`);
    }
    const files = ['lp/1.wav', 'lp/2/2.wav', 'lp/2/a/3.wav'];
    const loops = ['a', 'b', 'c'].map((name) => `lp/2/a/up ${name} (link-loop)`);
    expect(new Set(await found(['lp'], options))).toEqual(new Set([...files, ...loops]));
    expect(new Set(await found(['lp/**/*.wav'], options))).toEqual(new Set(files));
  });

  test('a link to a folder is followed when it is named', async () => {
    const options = await folderOf('else/2.wav');
    await symlink('else', join(options.cwd, 'lp'));
    expect(await found(['lp'], options)).toEqual(['lp/2.wav']);
  });
});

describe('patterns', () => {
  test('match in natural order, upper and lower case alike, and no folders', async () => {
    const options = await folderOf('a/10.wav', 'a/2.WAV', 'b/1.wav', 'a/x.txt', 'c.wav/4.txt');
    expect(await found(['*/*.wav'], options)).toEqual(['a/2.WAV', 'a/10.wav', 'b/1.wav']);
    expect(await found(['**/*.wav'], options)).toEqual(['a/2.WAV', 'a/10.wav', 'b/1.wav']);
    expect(await found(['{b,a}/{1,2}.wav'], options)).toEqual(['a/2.WAV', 'b/1.wav']);
  });

  test('that match nothing, or folders only, are wrong usage', async () => {
    const options = await folderOf('lp/1.wav');
    for (const pattern of ['*.wav', 'l*', '[x].wav', '!lp/1.wav', '']) {
      await expect(findInputs(['lp', pattern], options)).rejects.toThrow(UsageError);
    }
  });

  test.each(['side [A].wav', 'a*b.wav', '{1,2}.wav', '!x.wav', 'why?.wav', 'back\\slash.wav'])(
    'a file called %s is that file, though it reads as a pattern',
    async (name) => {
      const options = await folderOf(name, 'side A.wav', 'aab.wav', '1.wav', 'whyx.wav');
      expect(await found([name], options)).toEqual([name]);
    },
  );

  test('a folder whose name reads as a pattern is that folder, also as the working folder', async () => {
    const options = await folderOf('[AB]/1.wav', 'A/2.wav');
    expect(await found(['[AB]'], options)).toEqual(['[AB]/1.wav']);
    expect(await found(['*.wav'], { cwd: join(options.cwd, '[AB]') })).toEqual(['1.wav']);
  });
});

test('each file comes once, where it was first named, however it is spelled', async () => {
  const options = await folderOf('lp/1.wav', 'lp/2.wav');
  const args = [
    'lp/2.wav',
    'lp',
    './lp/1.wav',
    'lp/*.wav',
    join(options.cwd, 'lp/2.wav'),
    'no',
    'no',
  ];
  expect(await found(args, options)).toEqual(['lp/2.wav', 'lp/1.wav', 'no (not-found)']);
});

test('the natural order is one: any paths, sorted from any beginning, end up alike', () => {
  const name = fc.string({ unit: fc.constantFrom('a', 'A', 'á', '0', '1', '9', ' ', '.', '/') });
  fc.assert(
    fc.property(fc.uniqueArray(name), (paths) => {
      const sorted = [...paths].sort(byNaturalOrder);
      expect([...paths].reverse().sort(byNaturalOrder)).toEqual(sorted);
    }),
    { numRuns: 300 },
  );
  expect(['b', 'a/10', 'a/9', 'a', 'a/09'].sort(byNaturalOrder)).toEqual([
    'a',
    'a/09',
    'a/9',
    'a/10',
    'b',
  ]);
});
