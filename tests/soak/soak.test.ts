// The short form of what `npm run soak` does at length.
import { describe, expect, test } from 'vitest';
import { killMoments } from './kill-moments.mjs';
import { soakWatch } from './soak-watch.mjs';

describe('what is killed at any moment', () => {
  test.each(['forecast', 'watch'] as const)(
    '%s leaves each older result as it was or replaced as a whole, and nothing in the way',
    async (name) => {
      const found = await killMoments(name, { moments: 2, sides: 2 });
      expect(found).toMatchObject({ moments: 2, broken: [], isRight: true });
      expect(found.files).toBeGreaterThan(1);
    },
  );
});

test('a watch that is ended and killed on the way reports every whole file, once', async () => {
  const { misfits, told, expected, exitCodes, stderr } = await soakWatch({
    files: 30,
    settleSeconds: 0.5,
    patience: 20_000,
  });
  const { untold, ...others } = misfits;
  expect(others).toEqual({ missing: [], repeated: [], unexpected: [], examinedTwice: [] });
  // Of what was just written when the watch was killed the line may be missing: two jobs.
  expect(untold.length).toBeLessThanOrEqual(2);
  expect(told.examined + told.same + untold.length).toBeGreaterThanOrEqual(expected);
  expect(told.failed).toBe(0);
  expect({ exitCodes, stderr }).toEqual({ exitCodes: [0, 0], stderr: '' });
});
