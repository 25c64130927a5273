/** Choices that look random and are the same for the same numbers. */
export interface Draw {
  /** A whole number from 0 up to, but not including, `end`. */
  readonly below: (end: number) => number;
  /** True in that share of the cases. */
  readonly chance: (share: number) => boolean;
  /** One of a list that is not empty. */
  readonly pick: <T>(of: readonly [T, ...T[]]) => T;
  /** Any of a list; null of an empty one. */
  readonly any: <T>(of: readonly T[]) => T | null;
}

/** @param next gives numbers from 0 up to 1 */
export function drawing(next: () => number): Draw {
  const below = (end: number) => Math.floor(end * next());
  return {
    below,
    chance: (share) => next() < share,
    pick: (of) => of[below(of.length)] ?? of[0],
    any: (of) => of[below(of.length)] ?? null,
  };
}
