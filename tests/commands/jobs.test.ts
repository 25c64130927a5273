import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { forecastSchema } from '../../src/report/forecast-schema.js';
import { filledFolder } from '../support/filled-folder.js';
import { runFurrow } from '../support/run-furrow.js';
import {
  longWav,
  NARROW_LATHE,
  programWav,
  type SideFile,
  silentWav,
} from '../support/side-files.js';

describe('--jobs', () => {
  // 16 MiB of files are worth threads, and 120 s are cut in two parts. The last is planned apart.
  test('1, 2 and 3 give the same bytes, of files in parts and a short one', async () => {
    const cwd = await filledFolder([
      ['a.wav', longWav(130)],
      ['b.wav', programWav(5)],
      ['c.wav', longWav(120)],
      NARROW_LATHE,
    ]);
    const results = [];
    for (const jobs of ['1', '2', '3']) {
      const flags = ['--jobs', jobs, '--json', '--quarters', '--save-motion', '.'];
      const files = ['a.wav', 'b.wav', 'c.wav'];
      const { stdout, exitCode } = await runFurrow(['forecast', ...files, ...flags], { cwd });
      expect(exitCode).toBe(0);
      results.push({ stdout, motion: await readFile(join(cwd, 'a.motion')) });
    }
    const [one, ...others] = results;
    expect(forecastSchema.parse(JSON.parse(one?.stdout ?? '')).sides).toHaveLength(3);
    for (const other of others) {
      expect(other.stdout).toBe(one?.stdout);
      expect(other.motion.equals(one?.motion ?? Buffer.alloc(0))).toBe(true);
    }
  });

  test.each(['0', '1.5', '-1', 'all'])('%s is wrong usage', async (jobs) => {
    const { stderr, exitCode } = await runFurrow(['forecast', 'x.wav', '--jobs', jobs]);
    expect(stderr).toContain('--jobs');
    expect(exitCode).toBe(2);
  });
});

describe('what goes wrong in furrow itself', () => {
  const sides = (bytes: Uint8Array): SideFile[] => [
    ['1 before.wav', bytes],
    ['2 dies.wav', bytes],
    ['3 after.wav', bytes],
    ['4 no sound.wav', 'notes'],
  ];

  /** Forecasts with something in the way of the file whose name says that it dies. */
  async function sabotaged(cwd: string, how: string, ...flags: readonly string[]) {
    const sabotage = new URL('../support/sabotage.mjs', import.meta.url).href;
    const env = { NO_COLOR: '1', NODE_OPTIONS: `--import ${sabotage}`, SABOTAGE: how };
    return await runFurrow(['forecast', '--json', '--quiet', '.', ...flags], { cwd, env });
  }

  // 40 s each are worth threads, 2 s are not.
  test.each([
    ['bug', programWav(2)],
    ['bug in a thread', silentWav(40)],
    ['death of a thread', silentWav(40)],
  ])('a %s costs its file only, and is 70, before 3 and 1', async (how, bytes) => {
    const cwd = await filledFolder(sides(bytes));
    const { stdout, stderr, exitCode } = await sabotaged(cwd, how, '--fail-on', 'note');
    const { sides: done, failures } = forecastSchema.parse(JSON.parse(stdout));
    expect(done.map(({ name }) => name)).toEqual(['1 before.wav', '3 after.wav']);
    expect(failures).toMatchObject([
      { path: '2 dies.wav', code: 'crashed' },
      { path: '4 no sound.wav', code: 'not-wav' },
    ]);
    expect(stderr).toContain('2 dies.wav: this is a bug in furrow, not in the file');
    expect(exitCode).toBe(70);
  });
});
