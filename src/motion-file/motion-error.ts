import { InputError, type InputErrorCode } from '../errors.js';

/** What is wrong with a motion file. */
export interface MotionFault {
  readonly code: InputErrorCode;
  readonly found: string;
  readonly expected: string;
  /** What the user can do about it, as an imperative. */
  readonly remedy: string;
}

/** The fault in one line: path, found, expected, what to do. */
export function motionError(path: string, fault: MotionFault): InputError {
  const { code, found, expected, remedy } = fault;
  return new InputError(path, code, `${path}: found ${found}, expected ${expected}; ${remedy}`);
}
