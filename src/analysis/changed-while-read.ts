import { InputError } from '../errors.js';

/**
 * What is said of a file that did not stay as it was when its head was read: whatever came out of
 * it could be of neither the old content nor the new.
 * @param found what it is like now
 * @param expected what it was like when it was opened
 */
export function changedWhileRead(path: string, found: string, expected: string): InputError {
  const message = `${path}: found ${found}, expected ${expected}`;
  const remedy = 'it changed while it was read: wait until it is written, then try again';
  return new InputError(path, 'changed-while-read', `${message}; ${remedy}`);
}
