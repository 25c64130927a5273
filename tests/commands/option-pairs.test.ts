import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { runFurrow, withFolder } from '../support/run-furrow.js';

const SIGNAL = fileURLToPath(
  new URL('../reference-signals/closed-forms/inter-sample.wav', import.meta.url),
);

describe('an elliptical filter that is off', () => {
  const profile = ['--no-discovery', '--elliptical', 'off'];

  test.each([
    ['forecast', [SIGNAL, '--json', ...profile], '"ellipticalHz": null'],
    ['profile', ['--json', ...profile], '"ellipticalHz"'],
  ])('is taken by %s', async (command, args, told) => {
    const { stdout, exitCode } = await runFurrow([command, ...args]);
    expect(exitCode).toBe(0);
    expect(stdout).toContain(told);
  });
});

describe('options that would leave each other out', () => {
  test.each([
    [['--json', '--brief'], '--brief'],
    [['--ndjson', '--details'], '--details'],
    [['--scale', '--details'], '--scale'],
    [['--scale', '--common-level'], '--scale'],
    [['--scale', '--against', 'older.wav'], '--scale'],
    [['--brief', '--against', 'older.wav'], '--brief'],
  ])('%j is refused before any work', async (options, named) => {
    const { stdout, stderr, exitCode } = await runFurrow(['forecast', SIGNAL, ...options]);
    expect({ stdout, exitCode }).toEqual({ stdout: '', exitCode: 2 });
    expect(stderr).toContain(`furrow: ${named}: `);
  });
});

test.each([
  [['--table', 'out.csv', '--client', 'out.csv'], '--client'],
  [['--markers', '.', '--table', 'inter-sample.markers.csv'], '--table'],
  [['--cue', '.', '--html', 'inter-sample.wav'], '--html'],
])('two outputs to one file are refused: %j', async (options, second) => {
  await withFolder(async (cwd) => {
    const { stderr, exitCode } = await runFurrow(['forecast', SIGNAL, ...options], { cwd });
    expect(exitCode).toBe(2);
    expect(stderr).toContain(`furrow: ${second}: `);
    expect(stderr).toContain('it is also written by');
  });
});
