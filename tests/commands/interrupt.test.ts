import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { expect, test } from 'vitest';
import { filledFolder } from '../support/filled-folder.js';
import { startFurrow } from '../support/run-furrow.js';
import { longWav } from '../support/side-files.js';

const SIDES = [1, 2].map((side) => [`side ${side}.wav`, longWav(125)] as const);
const OLD = 'the table of an earlier run';

/** Whether it is time, by what is in the folder that is written to. */
type Moment = (names: readonly string[]) => boolean;

test.each<[string, Moment]>([
  ['before the first file is written', () => true],
  ['while the first is written', (names) => names.some(isUnfinished)],
  ['while a later one is', (names) => names.some(isUnfinished) && names.length > 3],
])('an interrupt %s leaves no half of a file, no thread and no process', async (_, isTime) => {
  const cwd = await filledFolder([...SIDES, ['table.csv', OLD]]);
  const flags = ['--cue', 'out', '--save-motion', 'out', '--csv', 'out', '--table', 'table.csv'];
  const running = startFurrow(['forecast', '.', '--quiet', ...flags], { cwd });
  for (let names = await namesIn(join(cwd, 'out')); names === null || !isTime(names); ) {
    names = await namesIn(join(cwd, 'out'));
  }
  running.kill('SIGINT');
  const { stdout, stderr, exitCode } = await running;
  expect({ stdout, stderr, exitCode }).toEqual({ stdout: '', stderr: '', exitCode: 130 });

  const names = await readdir(join(cwd, 'out'));
  expect(names.filter(isUnfinished)).toEqual([]);
  expect(await readFile(join(cwd, 'table.csv'), 'utf8')).toBe(OLD);
  // What is there is whole: as a second, undisturbed run writes it.
  const left = new Map<string, Buffer>();
  for (const name of names) left.set(name, await readFile(join(cwd, 'out', name)));
  await startFurrow(['forecast', '.', '--quiet', ...flags], { cwd });
  for (const [name, bytes] of left) {
    expect((await readFile(join(cwd, 'out', name))).equals(bytes), name).toBe(true);
  }
  expect(await processesIn(cwd)).toEqual([]);
});

/** null while it is not there. */
async function namesIn(folder: string): Promise<string[] | null> {
  return await readdir(folder).catch(() => null);
}

function isUnfinished(name: string): boolean {
  return name.startsWith('.furrow-');
}

/** Numbers of the processes whose working folder it is. Source: proc(5) of Linux. */
async function processesIn(folder: string): Promise<string[]> {
  const script =
    'for p in /proc/[0-9]*; do [ "$(readlink "$p/cwd")" = "$1" ] && echo "$p"; done; true';
  const { stdout } = await execa('bash', ['-c', script, 'processes', folder]);
  return stdout === '' ? [] : stdout.split('\n');
}
