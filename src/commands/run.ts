import type { StandardOutput } from './standard-output.js';
import type { Surroundings } from './surroundings.js';

/** What a command is handed beside its arguments. */
export interface Run {
  readonly surroundings: Surroundings;
  readonly output: StandardOutput;
  /** Takes the exit code of a command that came to its end. */
  readonly done: (exitCode: number) => void;
}
