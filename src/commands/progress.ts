import { progressText } from './progress-text.js';
import type { StandardError } from './standard-error.js';
import type { Surroundings } from './surroundings.js';

/** Shows how far a run is, on a terminal as a line that changes, elsewhere as a line now and then. */
export interface Progress {
  /** The next file in order is done. */
  readonly fileDone: () => void;
  /** Takes the line away until there is something new to show. */
  readonly hide: () => void;
  /** Takes the line away and shows no more. */
  readonly close: () => void;
}

/** What there is to do. */
export interface Work {
  /** What is shown of each file. */
  readonly names: readonly string[];
  readonly bytes: number;
  /** Bytes of sound that are done. */
  readonly bytesDone: () => number;
}

/** Short work ends before the first of these. */
const TERMINAL_MILLISECONDS = 200;
const PLAIN_MILLISECONDS = 10_000;

export function showProgress(
  work: Work,
  errors: StandardError,
  { now, isErrorTerminal, errorColumns }: Surroundings,
): Progress {
  const start = now();
  let filesDone = 0;
  const show = () => {
    const text = progressText({
      filesDone,
      files: work.names.length,
      current: work.names[filesDone] ?? null,
      bytesDone: work.bytesDone(),
      bytes: work.bytes,
      elapsedSeconds: (now() - start) / 1000,
    });
    if (isErrorTerminal) errors.status(oneLine(text, errorColumns));
    else errors.notice(text);
  };
  const timer = setInterval(show, isErrorTerminal ? TERMINAL_MILLISECONDS : PLAIN_MILLISECONDS);
  return {
    fileDone: () => {
      filesDone += 1;
    },
    hide: () => errors.status(''),
    close: () => {
      clearInterval(timer);
      errors.status('');
    },
  };
}

/** A line that fits, or else what is behind the last column would stay on the screen. */
function oneLine(text: string, columns: number | null): string {
  return columns === null || text.length < columns
    ? text
    : `${text.slice(0, Math.max(columns - 2, 0))}…`;
}
