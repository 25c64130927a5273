import type { Failure } from '../../report/failure.js';
import type { IntakeFileJson } from '../../report/intake-schema.js';
import type { WatchEvent } from './watch-event.js';

/** What a watch does, for whom. Times are in milliseconds. */
export interface WatchSetup {
  /** The folder that is watched, and that of the reports; both are there. */
  readonly folder: string;
  readonly out: string;
  /** Whether links out of the folder are followed. */
  readonly follow: boolean;
  /** How long size and time of a file have to stay as they are for it to be whole. */
  readonly settle: number;
  /** How often everything is looked at, for file systems that do not say what happens. */
  readonly lookAgain: number;
  /** How many files are examined at a time. */
  readonly jobs: number;
  /** Version of furrow, and a hash of all that a report depends on besides the file. */
  readonly version: string;
  readonly examinedWith: string;
  /** Examines one file; never rejects for what is the file's. */
  readonly examine: (path: string) => Promise<IntakeFileJson | Failure>;
  /**
   * Whether what is said of bytes under one name is said of them under the other; of a name that is
   * itself told, not even with itself.
   */
  readonly isNamedAlike: (one: string, other: string) => boolean;
  readonly tell: (event: WatchEvent) => Promise<void>;
  /** A clock that never goes back. */
  readonly now: () => number;
}
