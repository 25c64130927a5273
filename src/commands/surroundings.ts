import type { Readable, Writable } from 'node:stream';

/** What a command may know of the process it runs in. */
export interface Surroundings {
  readonly stdin: Readable;
  readonly stdout: Writable;
  readonly stderr: Writable;
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** Whether stdout is a terminal, and how wide; null where it is none. */
  readonly isTerminal: boolean;
  readonly columns: number | null;
  /** The same of stderr. */
  readonly isErrorTerminal: boolean;
  readonly errorColumns: number | null;
  /** Milliseconds of a clock that never goes back. */
  readonly now: () => number;
  /** Threads that can run at a time. */
  readonly cores: number;
  readonly cwd: string;
  /**
   * Has the first signal to end ask for it instead; the process then ends when the command does,
   * or at once at a second signal.
   */
  readonly askedToEnd: (ask: () => void) => void;
}
