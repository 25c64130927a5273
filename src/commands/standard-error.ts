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
  /**
   * A line that the next one, or anything else, takes the place of; empty takes it away. For
   * terminals only: silent elsewhere and with --quiet.
   */
  readonly status: (text: string) => void;
}

/** To the start of the line, and clears it. Source: ECMA-48, CR and EL. */
export const CLEAR_LINE = '\r\u001b[K';

export function standardError(
  stream: Writable,
  { isQuiet, isTerminal }: { readonly isQuiet: boolean; readonly isTerminal: boolean },
): StandardError {
  // Nobody is left to be told that nobody is listening.
  stream.on('error', () => {});
  let shown = '';
  const status = (text: string) => {
    if (!isTerminal || isQuiet || text === shown) return;
    shown = text;
    stream.write(`${CLEAR_LINE}${safeText(text)}`);
  };
  const plain = (text: string) => {
    status('');
    stream.write(text.split('\n').map(safeText).join('\n'));
  };
  const error = (text: string) => plain(text.replaceAll(/^/gm, 'furrow: ').concat('\n'));
  return { plain, error, notice: (text) => (isQuiet ? undefined : error(text)), status };
}
