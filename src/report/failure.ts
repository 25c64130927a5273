import type { InputErrorCode } from '../errors.js';

export const FAILURE_CODES = [
  'not-found',
  'not-a-file',
  'no-permission',
  'read-failed',
  'changed-while-read',
  'not-wav',
  'bad-header',
  'no-format',
  'no-data',
  'bad-encoding',
  'bad-channels',
  'bad-rate',
  'bad-sample',
  'too-short',
  'empty-folder',
] as const satisfies readonly (InputErrorCode | 'empty-folder')[];

/** An input that gave no forecast, and why. */
export interface Failure {
  readonly path: string;
  /** Stable, for scripts. A folder without any WAV file in it is `empty-folder`. */
  readonly code: InputErrorCode | 'empty-folder';
  readonly message: string;
}
