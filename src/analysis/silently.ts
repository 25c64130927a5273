/**
 * Calls something of a library that tells its errors to the console as well as to its caller: they
 * become a failure of the file, and what is on stderr is the command's to say.
 * @param begin does its work before it first waits
 */
export function silently<T>(begin: () => Promise<T>): Promise<T> {
  const { console: terminal } = globalThis;
  globalThis.console = { ...terminal, error: () => {} };
  try {
    return begin();
  } finally {
    globalThis.console = terminal;
  }
}
