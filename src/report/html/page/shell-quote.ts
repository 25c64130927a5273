/** A word as a POSIX shell reads it back: as it is if nothing in it is special, else in quotes. */
export function shellQuote(word: string): string {
  return /^[A-Za-z0-9_./:=@%+,-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`;
}
