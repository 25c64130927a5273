// The code that V8 keeps of the bundles saves time and nothing else: whatever becomes of it, the
// command says the same.
import { cp, mkdir, readdir, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { execa } from 'execa';
import { beforeAll, describe, expect, test } from 'vitest';
import { COMMAND } from '../support/run-furrow.js';
import { sharedFolder } from '../support/shared-folder.js';
import { programWav, silentWav } from '../support/side-files.js';

const PACKAGE = join(dirname(COMMAND), '..');
const TELL_CACHES = new URL('../support/tell-caches.mjs', import.meta.url).href;

const forecast = (path: string) => ['forecast', path, '--no-discovery', '--json', '--jobs', '2'];
const COMMANDS = [forecast('short.wav'), forecast('long.wav'), ['forecast', 'none.wav']];

describe('the code kept of the bundles', () => {
  const folder = sharedFolder();
  /** What is said with the caches as the build left them. */
  const expected: Awaited<ReturnType<typeof run>>['said'][] = [];
  beforeAll(async () => {
    const cwd = await folder();
    await writeFile(join(cwd, 'short.wav'), programWav(2));
    // Long enough for threads: more than 16 MiB.
    await writeFile(join(cwd, 'long.wav'), silentWav(100));
    for (const name of ['bin', 'dist', 'package.json']) {
      await cp(join(PACKAGE, name), join(cwd, name), { recursive: true });
    }
    for (const args of COMMANDS) expected.push((await run(args)).said);
    expect(expected.map(({ exitCode }) => exitCode)).toEqual([0, 0, 3]);
  });

  async function run(args: readonly string[], flags: readonly string[] = []) {
    const cwd = await folder();
    const command = join(cwd, 'bin', 'furrow.js');
    const ran = await execa(process.execPath, [...flags, command, ...args], {
      cwd,
      env: { NO_COLOR: '1' },
      extendEnv: false,
      reject: false,
    });
    const lines = ran.stderr.split('\n');
    const told = lines.filter((line) => line.startsWith('cache of '));
    const stderr = lines.filter((line) => !told.includes(line));
    return { fates: told, said: { stdout: ran.stdout, stderr, exitCode: ran.exitCode } };
  }

  const fatesOf = async (path: string, ...flags: string[]) =>
    (await run(forecast(path), ['--import', TELL_CACHES, ...flags])).fates;

  test.each(['short.wav', 'long.wav'])('is taken for every file that %s needs', async (path) => {
    const fates = await fatesOf(path);
    expect(fates).toContain('cache of cli.cjs: taken');
    // A thread that is late finds other flags: one that has work already has set them.
    const ofThreads = fates.filter((fate) => fate.startsWith('cache of side-worker'));
    expect(ofThreads.includes('cache of side-worker.cjs: taken')).toBe(path === 'long.wav');
    const untaken = fates.filter((fate) => !fate.endsWith(': taken') && !ofThreads.includes(fate));
    expect(untaken).toEqual([]);
  });

  test('is refused by a V8 with other flags, which says the same', async () => {
    const fates = await fatesOf('short.wav', '--no-lazy-feedback-allocation');
    expect(fates).toContain('cache of cli.cjs: refused');
    const other = await run(forecast('short.wav'), ['--no-lazy-feedback-allocation']);
    expect(other.said).toEqual(expected[0]);
  });

  /** What can become of a cache; the head is 128 bytes long, then the code comes twice. */
  const FATES: [string, (path: string, bytes: Buffer) => Promise<unknown>][] = [
    ['is missing', async (path) => await rm(path)],
    ['is a folder', async (path) => await rm(path).then(() => mkdir(path))],
    ['is empty', async (path) => await truncate(path, 0)],
    ['ends with its head', async (path) => await truncate(path, 128)],
    ['is half as long', async (path, { length }) => await truncate(path, length >> 1)],
    [
      'is another Node version’s',
      (path, bytes) => put(path, bytes, process.version, '-'.repeat(process.version.length)),
    ],
    ['is another source’s', (path, bytes) => put(path, bytes, '// ', '//-')],
    ['is nonsense', async (path, { length }) => await writeFile(path, Buffer.alloc(length, 0x61))],
    ['has a changed byte', async (path, bytes) => await writeFile(path, changed(bytes))],
  ];

  test.each(FATES)('that %s changes nothing of what is said', async (_, spoil) => {
    const cwd = await folder();
    const caches = (await readdir(join(cwd, 'dist'))).filter((name) => name.endsWith('.cache'));
    expect(caches.length).toBeGreaterThan(0);
    const kept = new Map<string, Buffer>();
    for (const name of caches) {
      const path = join(cwd, 'dist', name);
      const bytes = await readFile(path);
      kept.set(path, bytes);
      await spoil(path, bytes);
    }
    const fates = await fatesOf('long.wav');
    const told = [];
    for (const args of COMMANDS) told.push((await run(args)).said);
    for (const [path, bytes] of kept) {
      await rm(path, { recursive: true, force: true });
      await writeFile(path, bytes);
    }
    expect(new Set(fates.map((fate) => fate.split(': ')[1]))).toEqual(new Set(['none']));
    expect(told).toEqual(expected);
  });
});

async function put(path: string, bytes: Buffer, old: string, other: string): Promise<void> {
  const text = bytes.toString('latin1');
  await writeFile(path, text.replace(old, other), 'latin1');
}

/** One bit in the middle of the first copy. */
function changed(bytes: Buffer): Buffer {
  const at = 128 + ((bytes.length - 128) >> 2);
  bytes.writeUInt8(bytes.readUInt8(at) ^ 0x10, at);
  return bytes;
}
