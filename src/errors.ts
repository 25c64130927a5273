/** A flag, the profile or the sheet is wrong; nothing was done. Exit code 2. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** Why one file could not be read, as stable codes for scripts. Each has its row in README.md. */
export const INPUT_ERROR_CODES = [
  'not-found',
  'bad-name',
  'not-a-file',
  'link-outside',
  'link-loop',
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
  'overlong',
  'not-motion',
  'motion-version',
  'motion-damaged',
  'bad-motion',
  'motion-differs',
] as const;

export type InputErrorCode = (typeof INPUT_ERROR_CODES)[number];

/** One file cannot be read or is not fit; collected in `failures`, exit code 3. */
export class InputError extends Error {
  override readonly name = 'InputError';
  readonly path: string;
  readonly code: InputErrorCode;

  constructor(path: string, code: InputErrorCode, message: string, options?: ErrorOptions) {
    super(message, options);
    this.path = path;
    this.code = code;
  }
}

/** A result could not be written. Exit code 4. */
export class OutputError extends Error {
  override readonly name = 'OutputError';
}
