/** Things that are to be looked at again when some time has passed. */
export interface DueList<T> {
  readonly size: number;
  readonly has: (key: string) => boolean;
  /** Puts a thing in, or has it wait anew. */
  readonly put: (key: string, value: T, now: number) => void;
  readonly remove: (key: string) => boolean;
  /** Takes out the one that has waited longest, if its time has come; null if none has. */
  readonly take: (now: number) => readonly [key: string, value: T] | null;
  /** When the next one is due; infinity if there is none. */
  readonly next: () => number;
}

/**
 * @param delay how long each waits, in the unit of whatever clock is told
 */
export function dueList<T>(delay: number): DueList<T> {
  // All wait equally long, so that the order in which they came in is that in which they are due.
  const entries = new Map<string, { readonly value: T; readonly due: number }>();
  const first = () => entries.entries().next().value;
  return {
    get size() {
      return entries.size;
    },
    has: (key) => entries.has(key),
    put: (key, value, now) => {
      entries.delete(key);
      entries.set(key, { value, due: now + delay });
    },
    remove: (key) => entries.delete(key),
    take: (now) => {
      const entry = first();
      if (entry === undefined || entry[1].due > now) return null;
      entries.delete(entry[0]);
      return [entry[0], entry[1].value];
    },
    next: () => first()?.[1].due ?? Number.POSITIVE_INFINITY,
  };
}
