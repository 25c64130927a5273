/** What to say of an error that is furrow's own, with where it came from. */
export function bugText(error: unknown): string {
  const stack = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return `this is a bug in furrow, not in what it was given; please report it\n${stack}`;
}
