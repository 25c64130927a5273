/** An error of the operating system, with its code. */
export interface SystemError extends Error {
  readonly code: string;
}

/** Whether the operating system refused; a mistake in an argument has a code but no system call. */
export function isSystemError(error: unknown): error is SystemError {
  return (
    error instanceof Error &&
    'syscall' in error &&
    'code' in error &&
    typeof error.code === 'string'
  );
}

/** Why something cannot be written, for a reader who knows no error codes. */
export function reasonText({ code, message }: SystemError): string {
  switch (code) {
    case 'ENOSPC':
      return 'the disk is full';
    case 'EDQUOT':
      return 'the disk quota is used up';
    case 'EACCES':
    case 'EPERM':
      return 'writing there is not permitted';
    case 'EROFS':
      return 'the disk is read-only';
    case 'ENOENT':
      return 'its folder is not there';
    case 'ENOTDIR':
      return 'a part of the path is not a folder';
    case 'EISDIR':
      return 'it is a folder';
    case 'ELOOP':
      return 'its links lead in a circle';
    case 'ENAMETOOLONG':
      return 'the name is too long';
    case 'EFBIG':
      return 'the file would be larger than is allowed';
    case 'EPIPE':
      return 'nobody reads from it';
    default:
      return message;
  }
}
