import type { Writable } from 'node:stream';
import { safeText } from '../report/safe-text.js';

/** The one writer of stderr. */
export interface StandardError {
  /** An error, line by line behind the program's name. */
  readonly error: (text: string) => void;
  /** Something to know; silent with --quiet. */
  readonly notice: (text: string) => void;
  /** Text as it stands, but for what could act on the terminal. */
  readonly plain: (text: string) => void;
}

export function standardError(stream: Writable, isQuiet: boolean): StandardError {
  // Nobody is left to be told that nobody is listening.
  stream.on('error', () => {});
  const plain = (text: string) => {
    stream.write(text.split('\n').map(safeText).join('\n'));
  };
  const error = (text: string) => plain(text.replaceAll(/^/gm, 'furrow: ').concat('\n'));
  return { plain, error, notice: (text) => (isQuiet ? undefined : error(text)) };
}
