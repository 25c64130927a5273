import { InputError, type InputErrorCode } from '../errors.js';

/** What is wrong with the bytes of a file, and where. */
export interface WavFault {
  readonly code: InputErrorCode;
  /** Byte from the start of the file. */
  readonly at: number;
  readonly found: string;
  readonly expected: string;
  /** What the user can do about it, as an imperative. */
  readonly remedy: string;
}

/** The fault in one line: path, place, found, expected, what to do. */
export function wavError(path: string, fault: WavFault): InputError {
  const { at, found, expected, remedy } = fault;
  const message = `${path}: byte ${at}: found ${found}, expected ${expected}; ${remedy}`;
  return new InputError(path, fault.code, message);
}

/**
 * Four bytes of a file as they may be shown: quoted if they are plain text, else as hexadecimal.
 * A file's bytes never reach a terminal unescaped.
 */
export function shownId(id: string): string {
  if (id === '') return 'the end of the file';
  if (isPlainId(id)) return `"${id}"`;
  const hex = Array.from(id, (letter) => letter.charCodeAt(0).toString(16).padStart(2, '0'));
  return `bytes ${hex.join(' ')}`;
}

/** True for what RIFF allows as a chunk's name: printable ASCII. */
export function isPlainId(id: string): boolean {
  return /^[\x20-\x7e]+$/.test(id);
}
