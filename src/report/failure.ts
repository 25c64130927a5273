import { INPUT_ERROR_CODES } from '../errors.js';

/**
 * All reasons for which an input gives no result; stable, for scripts. A folder without any file to
 * forecast in it is `empty-folder`, a file that furrow itself failed on is `crashed`.
 */
export const FAILURE_CODES = [...INPUT_ERROR_CODES, 'empty-folder', 'crashed'] as const;

export type FailureCode = (typeof FAILURE_CODES)[number];

/** An input that gave no forecast, and why. */
export interface Failure {
  readonly path: string;
  readonly code: FailureCode;
  readonly message: string;
  /** Where in furrow it failed, of a file that crashed it. */
  readonly stack?: string;
}
