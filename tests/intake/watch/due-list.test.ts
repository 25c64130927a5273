import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dueList } from '../../../src/intake/watch/due-list.js';

const step = fc.record({
  key: fc.constantFrom('a', 'b', 'c', 'd'),
  act: fc.constantFrom('put', 'put', 'remove', 'take'),
  passed: fc.integer({ min: 0, max: 6 }),
});

test('what is taken has waited since it was put in last, and nothing that waits longer is passed over', () => {
  fc.assert(
    fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
      const delay = 10;
      const list = dueList<number>(delay);
      /** When each was put in last. */
      const since = new Map<string, number>();
      let now = 0;
      for (const [value, { key, act, passed }] of steps.entries()) {
        now += passed;
        if (act === 'put') {
          list.put(key, value, now);
          since.set(key, now);
        } else if (act === 'remove') {
          expect(list.remove(key)).toBe(since.delete(key));
        } else {
          const longest = Math.min(...since.values());
          expect(list.next()).toBe(longest + delay);
          const taken = list.take(now);
          expect(taken === null).toBe(longest + delay > now);
          if (taken !== null) {
            expect(since.get(taken[0])).toBe(longest);
            since.delete(taken[0]);
          }
        }
        expect(list.size).toBe(since.size);
      }
    }),
    { numRuns: 300 },
  );
});
