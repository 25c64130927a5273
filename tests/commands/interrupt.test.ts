import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { execa } from 'execa';
import { expect, test } from 'vitest';
import { filledFolder } from '../support/filled-folder.js';
import { startFurrow } from '../support/run-furrow.js';
import { longWav } from '../support/side-files.js';

const SIDES = [1, 2].map((side) => [`side ${side}.wav`, longWav(125)] as const);
const OLD = 'the table of an earlier run';

// The moments are those at which another file has come into its place: what is being written then
// is the next.
test.each([0, 1, 4])(
  'an interrupt after %d written files leaves no half of one, no thread and no process',
  async (moment) => {
    const cwd = await filledFolder([...SIDES, ['table.csv', OLD]]);
    const flags = ['--cue', 'out', '--save-motion', 'out', '--csv', 'out', '--table', 'table.csv'];
    const running = startFurrow(['forecast', '.', '--quiet', ...flags], { cwd });
    while ((await whole(join(cwd, 'out'))).length < moment || !(await exists(join(cwd, 'out')))) {
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    running.kill('SIGINT');
    const { stdout, stderr, exitCode } = await running;
    expect({ stdout, stderr, exitCode }).toEqual({ stdout: '', stderr: '', exitCode: 130 });

    const names = await readdir(join(cwd, 'out'));
    expect(names.filter((name) => name.includes('.tmp'))).toEqual([]);
    expect(await readFile(join(cwd, 'table.csv'), 'utf8')).toBe(OLD);
    // What is there is whole: as a second, undisturbed run writes it.
    const left = new Map<string, Buffer>();
    for (const name of names) left.set(name, await readFile(join(cwd, 'out', name)));
    await startFurrow(['forecast', '.', '--quiet', ...flags], { cwd });
    for (const [name, bytes] of left) {
      expect((await readFile(join(cwd, 'out', name))).equals(bytes), name).toBe(true);
    }
    expect(await processesIn(cwd)).toEqual([]);
  },
);

async function exists(folder: string): Promise<boolean> {
  return await readdir(folder).then(
    () => true,
    () => false,
  );
}

/** Files that have come into their place. */
async function whole(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch((): string[] => []);
  return names.filter((name) => !name.startsWith('.'));
}

/** Numbers of the processes whose working folder it is. Source: proc(5) of Linux. */
async function processesIn(folder: string): Promise<string[]> {
  const script =
    'for p in /proc/[0-9]*; do [ "$(readlink "$p/cwd")" = "$1" ] && echo "$p"; done; true';
  const { stdout } = await execa('bash', ['-c', script, 'processes', folder]);
  return stdout === '' ? [] : stdout.split('\n');
}
