import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmod, lstat, mkdir, readdir, readFile, stat, symlink, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { execa } from 'execa';
import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { OutputError } from '../../src/errors.js';
import { abandonWrites, writeAtomic, writeFileAtomic } from '../../src/report/write-atomic.js';
import { compileModule } from '../support/compile-module.js';
import { temporaryFolder } from '../support/temporary-folder.js';

const ENDLESS_WRITER = fileURLToPath(new URL('../support/endless-writer.mjs', import.meta.url));
const MOMENTS = [0, 1, 2, 3, 5, 8, 13];
/** The module under test as JavaScript, which a process of its own can load. */
let compiled = '';

/** As the system refuses: with a code and the call that failed. */
function refusal(code: string): Error {
  return Object.assign(new Error(`${code}: invented`), { code, syscall: 'write' });
}

async function folderWithOld(): Promise<{ folder: string; path: string }> {
  const folder = await temporaryFolder();
  const path = join(folder, 'result.csv');
  await writeFile(path, 'old');
  return { folder, path };
}

describe('a result that is written', () => {
  test('holds the bytes it was given, whatever they are, and nothing lies beside it', async () => {
    const folder = await temporaryFolder();
    const path = join(folder, 'result.bin');
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 1000 }), async (bytes) => {
        await writeFileAtomic(path, bytes);
        expect(new Uint8Array(await readFile(path))).toEqual(bytes);
        expect(await readdir(folder)).toEqual(['result.bin']);
      }),
      { numRuns: 20 },
    );
  });

  test('takes its name only when all of it is there', async () => {
    const { folder, path } = await folderWithOld();
    await writeAtomic(path, async (handle) => {
      await handle.write('new, ');
      expect(await readFile(path, 'utf8')).toBe('old');
      const beside = (await readdir(folder)).filter((name) => name !== 'result.csv');
      expect(beside).toHaveLength(1);
      expect(beside[0]).toMatch(/^\.furrow-/);
      await handle.write('whole');
    });
    expect(await readFile(path, 'utf8')).toBe('new, whole');
    expect(await readdir(folder)).toEqual(['result.csv']);
  });

  test('keeps the permissions of what it replaces', async () => {
    const { path } = await folderWithOld();
    for (const mode of [0o640, 0o600, 0o666, 0o755]) {
      await chmod(path, mode);
      await writeFileAtomic(path, 'new');
      expect((await stat(path)).mode & 0o7777).toBe(mode);
    }
  });

  test('has the permissions of any new file where nothing was', async () => {
    const { folder, path } = await folderWithOld();
    await writeFileAtomic(join(folder, 'new.csv'), 'new');
    expect((await stat(join(folder, 'new.csv'))).mode).toBe((await stat(path)).mode);
  });

  test('may have a name as long as a file system allows', async () => {
    const folder = await temporaryFolder();
    const name = 'x'.repeat(255);
    await writeFileAtomic(join(folder, name), 'new');
    expect(await readdir(folder)).toEqual([name]);
  });

  test('survives being written twenty times at once: one of them is there, whole', async () => {
    const { folder, path } = await folderWithOld();
    const texts = Array.from({ length: 20 }, (_, one) => `${one},`.repeat(5000));
    await Promise.all(texts.map((text) => writeFileAtomic(path, text)));
    expect(texts).toContain(await readFile(path, 'utf8'));
    expect(await readdir(folder)).toEqual(['result.csv']);
  });

  test('does not take the temporary file of another process for its own', async () => {
    const { folder, path } = await folderWithOld();
    const next = await nextNumber(path);
    const others = [1, 2].map((more) => `.furrow-${process.pid}-${next + more}.tmp`);
    for (const other of others) await writeFile(join(folder, other), 'theirs');
    await writeFileAtomic(path, 'new');
    expect(await readFile(path, 'utf8')).toBe('new');
    for (const other of others) {
      expect(await readFile(join(folder, other), 'utf8')).toBe('theirs');
    }
  });
});

async function nextNumber(path: string): Promise<number> {
  let number = Number.NaN;
  await writeAtomic(path, async () => {
    const [name] = (await readdir(join(path, '..'))).filter((one) => one.startsWith('.furrow'));
    number = Number(/-(\d+)\.tmp$/.exec(name ?? '')?.[1]);
  });
  return number;
}

describe('a link as the name of a result', () => {
  test('stays a link, and the file it leads to is replaced', async () => {
    const { folder, path } = await folderWithOld();
    await mkdir(join(folder, 'away'));
    const link = join(folder, 'away', 'link.csv');
    await symlink('../result.csv', link);
    await writeFileAtomic(link, 'new');
    expect((await lstat(link)).isSymbolicLink()).toBe(true);
    expect(await readFile(path, 'utf8')).toBe('new');
    expect(await readdir(join(folder, 'away'))).toEqual(['link.csv']);
  });

  test('is followed where it leads to nothing yet, over two links', async () => {
    const folder = await temporaryFolder();
    await mkdir(join(folder, 'there'));
    await symlink('there/second.csv', join(folder, 'first.csv'));
    await symlink('third.csv', join(folder, 'there', 'second.csv'));
    await writeFileAtomic(join(folder, 'first.csv'), 'new');
    expect((await lstat(join(folder, 'first.csv'))).isSymbolicLink()).toBe(true);
    expect(await readFile(join(folder, 'there', 'third.csv'), 'utf8')).toBe('new');
  });

  test('that leads back to itself is refused', async () => {
    const folder = await temporaryFolder();
    await symlink('b.csv', join(folder, 'a.csv'));
    await symlink('a.csv', join(folder, 'b.csv'));
    await expect(writeFileAtomic(join(folder, 'a.csv'), 'new')).rejects.toThrow(OutputError);
    expect((await readdir(folder)).toSorted()).toEqual(['a.csv', 'b.csv']);
  });
});

describe('a write that fails', () => {
  const FAILURES = [
    ['ENOSPC', 'the disk is full'],
    ['EDQUOT', 'the disk quota is used up'],
    ['EIO', 'EIO: invented'],
  ];

  test.each(FAILURES)('with %s leaves the old file as it was and says so', async (code, reason) => {
    const { folder, path } = await folderWithOld();
    const failing = writeAtomic(path, async (handle) => {
      await handle.write('half of the n');
      throw refusal(code ?? '');
    });
    await expect(failing).rejects.toThrow(OutputError);
    await expect(failing).rejects.toThrow(
      `${path}: cannot be written, ${reason}; the file that was there is untouched`,
    );
    await expect(failing).rejects.toHaveProperty('cause.code', code);
    expect(await readFile(path, 'utf8')).toBe('old');
    expect(await readdir(folder)).toEqual(['result.csv']);
  });

  test('in flushing leaves the old file as it was', async () => {
    const { folder, path } = await folderWithOld();
    const failing = writeAtomic(path, async (handle) => {
      await handle.write('new');
      handle.sync = () => Promise.reject(refusal('ENOSPC'));
    });
    await expect(failing).rejects.toThrow(OutputError);
    expect(await readFile(path, 'utf8')).toBe('old');
    expect(await readdir(folder)).toEqual(['result.csv']);
  });

  test('where nothing was leaves nothing', async () => {
    const folder = await temporaryFolder();
    const failing = writeAtomic(join(folder, 'new.csv'), async (handle) => {
      await handle.write('half');
      throw refusal('ENOSPC');
    });
    await expect(failing).rejects.toThrow('the disk is full; nothing was written');
    expect(await readdir(folder)).toEqual([]);
  });

  test('for want of a folder is told by path and reason', async () => {
    const path = join(await temporaryFolder(), 'gone', 'new\u001b.csv');
    await expect(writeFileAtomic(path, 'new')).rejects.toThrow(
      'new\\u{1b}.csv: cannot be written, its folder is not there; nothing was written',
    );
  });

  test('onto a folder is told, and the folder stays', async () => {
    const folder = await temporaryFolder();
    await mkdir(join(folder, 'result.csv'));
    const failing = writeFileAtomic(join(folder, 'result.csv'), 'new');
    await expect(failing).rejects.toThrow('it is a folder');
    expect(await readdir(folder)).toEqual(['result.csv']);
  });

  test('by a mistake of our own goes through as it is, and leaves the old file', async () => {
    const { folder, path } = await folderWithOld();
    const mistake = new TypeError('invented');
    await expect(writeAtomic(path, () => Promise.reject(mistake))).rejects.toBe(mistake);
    expect(await readFile(path, 'utf8')).toBe('old');
    expect(await readdir(folder)).toEqual(['result.csv']);
  });

  test.skipIf(process.platform !== 'linux')(
    'on a device that is always full is told, and the device stays',
    async () => {
      await expect(writeFileAtomic('/dev/full', 'new')).rejects.toThrow('the disk is full');
      expect((await stat('/dev/full')).isCharacterDevice()).toBe(true);
    },
  );
});

describe('an interrupt', () => {
  beforeAll(async () => {
    const { path, remove } = await compileModule('report/write-atomic');
    compiled = path;
    return remove;
  });

  test('takes away at once what is not in its place, and the old file stays', async () => {
    const { folder, path } = await folderWithOld();
    const writing = writeAtomic(path, async (handle) => {
      await handle.write('half');
      abandonWrites();
      expect(await readdir(folder)).toEqual(['result.csv']);
    });
    await expect(writing).rejects.toThrow(OutputError);
    expect(await readFile(path, 'utf8')).toBe('old');
  });

  test('after the write leaves the new file', async () => {
    const { path } = await folderWithOld();
    await writeFileAtomic(path, 'new');
    abandonWrites();
    expect(await readFile(path, 'utf8')).toBe('new');
  });

  test('by SIGINT at any moment leaves a whole file and nothing beside it', async () => {
    const { folder, path } = await folderWithOld();
    for (const moment of MOMENTS) {
      await interrupted(path, 'SIGINT', moment);
      expect(await readFile(path, 'utf8')).toMatch(WHOLE);
      expect(await readdir(folder)).toEqual(['result.csv']);
    }
  });

  test('by the system, which lets no file grow over 100 blocks, leaves the old file', async () => {
    const { folder, path } = await folderWithOld();
    const command = 'ulimit -f 100; exec "$0" "$@"';
    const args = ['-c', command, process.execPath, ENDLESS_WRITER, compiled, path];
    const ended = await execa('sh', args, { reject: false });
    expect(ended.stderr).toContain('the file would be larger than is allowed');
    expect(await readFile(path, 'utf8')).toBe('old');
    expect(await readdir(folder)).toEqual(['result.csv']);
  });

  test('by SIGKILL at any moment leaves a whole file', async () => {
    const { path } = await folderWithOld();
    for (const moment of MOMENTS) {
      await interrupted(path, 'SIGKILL', moment);
      expect(await readFile(path, 'utf8')).toMatch(WHOLE);
    }
  });
});

/** What the endless writer writes, or the first content. */
const WHOLE = /^(?:old|(\d)\1{999999})$/;

/** Kills a process that does nothing but write, so many milliseconds after it has begun to. */
async function interrupted(path: string, signal: NodeJS.Signals, moment: number): Promise<void> {
  const child = spawn(process.execPath, [ENDLESS_WRITER, compiled, path]);
  await once(child.stdout, 'data');
  await setTimeout(moment);
  const ended = once(child, 'exit');
  child.kill(signal);
  await ended;
}
