import { expect, test } from 'vitest';
import { encodeMotion } from '../../src/motion-file/encode-motion.js';
import { COLUMNS } from '../../src/motion-file/motion-columns.js';
import { emptyMotion } from '../support/empty-motion.js';
import { savedMotion } from '../support/saved-motion.js';

test.each([
  [100 / 3, 4e6],
  [45, 4e6],
])('20 minutes at %d rpm of motion that never repeats take less than %d bytes', (rpm, most) => {
  const motion = emptyMotion(1200, 60 / rpm);
  const next = numbers(7);
  // All 52 bits of each number differ from its neighbours', and so does its exponent by a few.
  for (const { of, type } of COLUMNS) {
    const column = of(motion);
    for (let index = 0; index < column.length; index++) {
      if (type === 'float64') column[index] = 1e-5 * (next() + next() * 2 ** -31);
      // Counts fall from class to class, as those of noise and of music do.
      if (type === 'uint32') column[index] = Math.floor(9000 * next() * 0.8 ** (index % 24));
      if (type === 'int16') column[index] = Math.floor(30 * next()) - 20;
    }
  }
  const bytes = encodeMotion(savedMotion(motion)).length;
  expect(bytes).toBeLessThan(most);
  expect(bytes).toBeGreaterThan(most / 2);
});

/** Numbers from 0 to 1, both left out: a linear congruence of period 2³¹ − 2, by Lehmer. */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
