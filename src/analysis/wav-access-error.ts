import { InputError, type InputErrorCode } from '../errors.js';

/** What a failure of the operating system means for one input. */
interface Meaning {
  readonly code: InputErrorCode;
  readonly words: string;
}

const NOT_FOUND: Meaning = {
  code: 'not-found',
  words: 'nothing of that name is there; check the spelling and the folder',
};
/** Where a name was no UTF-8, it reads as this, and no longer leads to its file. */
const REPLACEMENT = '\ufffd';
const BAD_NAME: Meaning = {
  code: 'bad-name',
  words: 'its name is not UTF-8, as which names are read; rename it',
};
const NO_PERMISSION: Meaning = {
  code: 'no-permission',
  words: 'reading it is not permitted; change its permissions or copy it',
};
const NOT_A_FILE: Meaning = {
  code: 'not-a-file',
  words: 'found something other than a regular file, expected one; name a sound file',
};
const LINK_LOOP: Meaning = {
  code: 'link-loop',
  words: 'found links that lead in a circle, expected a file; name the file itself',
};
const READ_FAILED: Meaning = {
  code: 'read-failed',
  words: 'reading it failed; check the disk or the connection and try again',
};

const MEANING_OF_SYSTEM_NAME: ReadonlyMap<string, Meaning> = new Map([
  ['ENOENT', NOT_FOUND],
  ['ENOTDIR', NOT_FOUND],
  ['ENAMETOOLONG', NOT_FOUND],
  // A path with a NUL in it: refused before the system sees it.
  ['ERR_INVALID_ARG_VALUE', NOT_FOUND],
  ['ELOOP', LINK_LOOP],
  ['EACCES', NO_PERMISSION],
  ['EPERM', NO_PERMISSION],
  ['EISDIR', NOT_A_FILE],
  // What opening a socket gives.
  ['ENXIO', NOT_A_FILE],
]);

/**
 * What a failed open, stat or read of an input means to the user.
 * @param cause whatever was thrown; an InputError comes back as it is
 */
export function accessError(path: string, cause: unknown): InputError {
  if (cause instanceof InputError) return cause;
  const systemName = systemNameOf(cause) ?? 'unknown reason';
  const meaning = MEANING_OF_SYSTEM_NAME.get(systemName) ?? READ_FAILED;
  const isNameless = meaning === NOT_FOUND && path.includes(REPLACEMENT);
  const { code, words } = isNameless ? BAD_NAME : meaning;
  return new InputError(path, code, `${path}: ${words} (${systemName})`, { cause });
}

/** The system's short name of an error, such as ENOENT; undefined if it has none. */
export function systemNameOf(cause: unknown): string | undefined {
  if (!(cause instanceof Error && 'code' in cause)) return undefined;
  return typeof cause.code === 'string' ? cause.code : undefined;
}
