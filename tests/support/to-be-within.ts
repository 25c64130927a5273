import { expect } from 'vitest';

type Numbers = number | ArrayLike<number>;

interface Miss {
  index: number;
  actual: number;
  expected: number;
  excess: number;
}

/** Compares point by point; each may be off by `absolute` or `relative`·|expected|, the larger. */
function misses(actual: Numbers, expected: Numbers, absolute: number, relative: number): Miss[] {
  const actuals = typeof actual === 'number' ? [actual] : Array.from(actual);
  const wanted = typeof expected === 'number' ? [expected] : Array.from(expected);
  if (actuals.length !== wanted.length) {
    throw new Error(`expected ${wanted.length} numbers, got ${actuals.length}`);
  }
  const found: Miss[] = [];
  for (const [index, value] of actuals.entries()) {
    const want = wanted[index] ?? Number.NaN;
    const allowed = Math.max(absolute, relative * Math.abs(want));
    const excess = Math.abs(value - want) - allowed;
    const same = Object.is(value, want) || value === want;
    if (!same && !(excess <= 0)) found.push({ index, actual: value, expected: want, excess });
  }
  return found;
}

expect.extend({
  toBeWithin(received: Numbers, expected: Numbers, absolute: number, relative = 0) {
    const found = misses(received, expected, absolute, relative);
    const worst = found.reduce<Miss | undefined>(
      (far, miss) => (far === undefined || !(miss.excess <= far.excess) ? miss : far),
      undefined,
    );
    return {
      pass: found.length === 0,
      message: () =>
        worst === undefined
          ? `every value lies within ${absolute} or ${relative} of what was expected`
          : `${found.length} value(s) off; worst at [${worst.index}]: ${worst.actual} against ` +
            `${worst.expected}, allowed ${absolute} or ${relative} of it, over by ${worst.excess}`,
    };
  },
});

declare module 'vitest' {
  // biome-ignore lint/suspicious/noExplicitAny: the declaration that this extends has the same
  interface Matchers<T = any> {
    /** Within `absolute`, or `relative` of the expected value, whichever is larger. */
    toBeWithin(expected: Numbers, absolute: number, relative?: number): T;
  }
}
