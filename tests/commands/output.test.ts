import { execa } from 'execa';
import { expect, test } from 'vitest';
import { runFurrow, SHELL_COMMAND, startFurrow } from '../support/run-furrow.js';

test('a result that cannot be written is exit code 4', async () => {
  // Source: full(4) of Linux: each write fails for want of space.
  const script = `${SHELL_COMMAND} schema > /dev/full`;
  const { stderr, exitCode } = await execa('bash', ['-c', script], { reject: false });
  expect(exitCode).toBe(4);
  expect(stderr).toContain('furrow: standard output cannot be written');
});

test('a reader that has left is no error, and nothing is said', async () => {
  const script = `set -o pipefail; ${SHELL_COMMAND} schema | true`;
  const { stderr, exitCode } = await execa('bash', ['-c', script], { reject: false });
  expect({ stderr, exitCode }).toEqual({ stderr: '', exitCode: 0 });
});

test('help to a reader that has left is no error either', async () => {
  const script = `set -o pipefail; ${SHELL_COMMAND} --help | true`;
  const { stderr, exitCode } = await execa('bash', ['-c', script], { reject: false });
  expect({ stderr, exitCode }).toEqual({ stderr: '', exitCode: 0 });
});

test('an interrupt ends it with exit code 130, at once and without a word', async () => {
  // It waits for the list of paths; the notice says that it has begun.
  const running = startFurrow(['forecast', '--files-from', '-', '--no-discovery']);
  await new Promise<void>((resolve) => {
    running.stderr.once('data', () => resolve());
  });
  running.kill('SIGINT');
  const { stdout, stderr, exitCode } = await running;
  expect({ stdout, stderr, exitCode }).toEqual({
    stdout: '',
    stderr: 'furrow: no profile file: built-in defaults',
    exitCode: 130,
  });
});

test('a run that has nothing left to wait for before it is over says that it is a bug, and is 70', async () => {
  const preload = new URL('../support/unanswered-output.mjs', import.meta.url).href;
  const { stdout, stderr, exitCode } = await runFurrow(['--version'], {
    env: { NO_COLOR: '1', NODE_OPTIONS: `--import ${preload}` },
  });
  expect(stdout).toBe('');
  expect(stderr).toMatch(/^furrow: this is a bug in furrow, .*\nfurrow: .*not over\n$/);
  expect(exitCode).toBe(70);
});
