import type { InputErrorCode } from '../errors.js';

export const FAILURE_CODES = [
  'not-found',
  'not-a-file',
  'no-permission',
  'read-failed',
  'changed-while-read',
  'not-wav',
  'not-aiff',
  'not-flac',
  'bad-header',
  'no-format',
  'no-data',
  'bad-encoding',
  'bad-channels',
  'bad-rate',
  'bad-sample',
  'sound-damaged',
  'too-short',
  'not-motion',
  'motion-version',
  'motion-damaged',
  'bad-motion',
  'motion-differs',
  'empty-folder',
  'crashed',
] as const satisfies readonly FailureCode[];

/**
 * Stable, for scripts. A folder without any file to forecast in it is `empty-folder`, a file that
 * furrow itself failed on is `crashed`.
 */
export type FailureCode = InputErrorCode | 'empty-folder' | 'crashed';

/** An input that gave no forecast, and why. */
export interface Failure {
  readonly path: string;
  readonly code: FailureCode;
  readonly message: string;
  /** Where in furrow it failed, of a file that crashed it. */
  readonly stack?: string;
}
