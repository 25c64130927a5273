import { PassThrough } from 'node:stream';
import { text } from 'node:stream/consumers';
import { runCommandLine } from '../../src/commands/command-line.js';
import type { Ran } from './run-furrow.js';

/** Runs a command line in this process, from the sources; nothing is a terminal. */
export async function runInProcess(args: readonly string[], cores = 1): Promise<Ran> {
  const [stdin, stdout, stderr] = [new PassThrough(), new PassThrough(), new PassThrough()];
  stdin.end();
  const told = Promise.all([text(stdout), text(stderr)]);
  const exitCode = await runCommandLine(args, {
    stdin,
    stdout,
    stderr,
    environment: { NO_COLOR: '1', LC_ALL: 'C.UTF-8' },
    isTerminal: false,
    columns: null,
    isErrorTerminal: false,
    errorColumns: null,
    now: () => performance.now(),
    cores,
    cwd: process.cwd(),
    askedToEnd: () => {},
  });
  stdout.end();
  stderr.end();
  const [out, err] = await told;
  return { stdout: out, stderr: err, exitCode };
}
