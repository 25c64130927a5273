// What SECURITY.md promises of the built command, seen from outside of it.
import { mkdir, readdir, readFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { execa } from 'execa';
import { describe, expect, test } from 'vitest';
import { encodeMotion } from '../../src/motion-file/encode-motion.js';
import { emptyMotion } from '../support/empty-motion.js';
import { filledFolder } from '../support/filled-folder.js';
import { flacBytes } from '../support/flac-writer.js';
import { needProgram } from '../support/outside-program.js';
import { COMMAND, runFurrow } from '../support/run-furrow.js';
import { savedMotion } from '../support/saved-motion.js';
import { programWav, type SideFile } from '../support/side-files.js';

const EVIL = '../../../evil$(touch pwned)`touch pwned`;touch pwned.wav';
const SHEET =
  '{ "format": "furrow.sheet/1", "sides": [{ "name": "A", "tracks": [{ "file": "a.wav" }] }] }';

const files = (): SideFile[] => [
  ['a.wav', programWav(3)],
  ['$(touch pwned).wav', programWav(2)],
  ['b.flac', flacBytes({ words: new Int16Array(20_000) })],
  ['c.motion', encodeMotion(savedMotion(emptyMotion(4), { name: EVIL }))],
  ['bad.wav', 'notes'],
  ['album.json', SHEET],
];

const OUTPUTS = [
  '--csv out --markers out --cue out --save-motion out',
  '--table out/t.csv --client out/c.txt --html out/',
].flatMap((flags) => flags.split(' '));

describe('runs no other program and opens no socket (strace)', () => {
  test.for<[string, string[]]>([
    ['forecast', ['forecast', '.', '--planner', 'tightest', '--jobs', '2', ...OUTPUTS]],
    ['side', ['side', 'album.json', '--json']],
    ['fit', ['fit', 'a.wav']],
    ['intake', ['intake', '.', '--junit', 'out/j.xml']],
    ['profile', ['profile']],
    ['schema', ['schema', 'forecast']],
    ['completion', ['completion', 'bash']],
  ])('%s', async ([, args], context) => {
    needProgram('strace', context);
    const cwd = await filledFolder(files());
    const { calls, stdout } = await traced([COMMAND, ...args], cwd);
    expect(calls).toEqual([expect.stringMatching(/^\d+ +execve\(/)]);
    expect(stdout).not.toBe('');
    expect(await readdir(cwd)).not.toContain('pwned');
  });

  test('a command that does is seen to', async (context) => {
    needProgram('strace', context);
    const cwd = await filledFolder([]);
    const script =
      "child_process.execSync('true'); net.connect(9, '127.0.0.1').on('error', () => {})";
    expect((await traced(['-e', script], cwd)).calls.length).toBeGreaterThan(3);
  });
});

test('writes where it is told to and nowhere else, whatever names say, and changes no input', async () => {
  const cwd = await filledFolder(files());
  const before = await contentsOf(cwd);
  const { exitCode, stderr } = await runFurrow(['forecast', '.', ...OUTPUTS, '--quiet'], { cwd });
  expect(exitCode, stderr).toBe(3);
  const after = await contentsOf(cwd);
  const added = [...after.keys()].filter((name) => !before.has(name));
  expect(added.length).toBeGreaterThan(12);
  expect(added.filter((name) => !/^out\/[^/]+$/.test(name))).toEqual([]);
  for (const [name, bytes] of before) expect(after.get(name)?.equals(bytes), name).toBe(true);
  const outside = await readdir(join(cwd, '..'));
  expect(outside.filter((name) => name.includes('evil'))).toEqual([]);
});

/** What the system is asked for that runs a program or reaches out, a line a call. */
async function traced(args: readonly string[], cwd: string) {
  await mkdir(join(cwd, 'out'), { recursive: true });
  const trace = join(cwd, 'out', 'trace');
  const flags = ['-f', '-qq', '-o', trace, '-e', 'trace=execve,socket,connect,bind'];
  const { stdout } = await execa('strace', [...flags, process.execPath, ...args], {
    cwd,
    reject: false,
  });
  const calls = (await readFile(trace, 'utf8')).split('\n');
  return { stdout, calls: calls.filter((call) => /^\d+ +\w+\(/.test(call)) };
}

async function contentsOf(folder: string): Promise<Map<string, Buffer>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const contents = new Map<string, Buffer>();
  for (const entry of entries.filter((one) => one.isFile())) {
    const path = join(entry.parentPath, entry.name);
    contents.set(relative(folder, path), await readFile(path));
  }
  return contents;
}
