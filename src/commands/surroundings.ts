import type { Readable, Writable } from 'node:stream';

/** What a command may know of the process it runs in. */
export interface Surroundings {
  readonly stdin: Readable;
  readonly stdout: Writable;
  readonly stderr: Writable;
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** Whether stdout is a terminal. */
  readonly isTerminal: boolean;
  readonly cwd: string;
}
