import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { execa, type Options } from 'execa';

/** Path of the command. */
export const COMMAND = fileURLToPath(new URL('../../bin/furrow.js', import.meta.url));

export interface Ran {
  readonly stdout: string;
  readonly stderr: string;
  readonly exitCode: number | undefined;
}

/** Runs the built command with nothing of the caller's environment, and waits for its end. */
export async function runFurrow(args: readonly string[], options: Options = {}): Promise<Ran> {
  const { stdout, stderr, exitCode } = await execa(process.execPath, [COMMAND, ...args], {
    env: { NO_COLOR: '1' },
    extendEnv: false,
    reject: false,
    stripFinalNewline: false,
    ...options,
  });
  return { stdout: String(stdout ?? ''), stderr: String(stderr ?? ''), exitCode };
}

/** Starts the built command with its stdin held open. */
export function startFurrow(args: readonly string[], { cwd = process.cwd() } = {}) {
  return execa(process.execPath, [COMMAND, ...args], {
    cwd,
    env: { NO_COLOR: '1' },
    extendEnv: false,
    reject: false,
    stdin: 'pipe',
  });
}

/** Hands a new folder to `use` and takes it away afterwards. */
export async function withFolder<T>(use: (folder: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'furrow-test-'));
  try {
    return await use(folder);
  } finally {
    await rm(folder, { recursive: true });
  }
}

/** The command as a line for `sh -c`, its arguments to be appended. */
export const SHELL_COMMAND = `'${process.execPath}' '${COMMAND}'`;
