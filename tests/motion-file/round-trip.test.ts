import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decodeMotion } from '../../src/motion-file/decode-motion.js';
import { encodeMotion } from '../../src/motion-file/encode-motion.js';
import { COLUMNS } from '../../src/motion-file/motion-columns.js';
import type { SavedMotion } from '../../src/motion-file/saved-motion.js';
import { emptyMotion } from '../support/empty-motion.js';
import { randomMotion } from '../support/random-motion.js';
import { savedMotion } from '../support/saved-motion.js';

const digest = fc.option(
  fc.string({ unit: fc.constantFrom('0', '5', 'a', 'f'), minLength: 64, maxLength: 64 }),
);

const anySaved: fc.Arbitrary<SavedMotion> = fc
  .record({
    motion: randomMotion(),
    name: fc.string({ unit: 'binary' }),
    truncated: fc.boolean(),
    audioSha256: digest,
  })
  .map(({ motion, ...rest }) => savedMotion(motion, rest));

test('what is saved comes back bit for bit, with the path it was read from', () => {
  fc.assert(
    fc.property(anySaved, fc.string(), (saved, path) => {
      const back = decodeMotion(path, encodeMotion(saved));
      expect(back).toEqual({ ...saved, source: { ...saved.source, path } });
    }),
    { numRuns: 60 },
  );
});

test('every bit of any finite number is kept, in every column', () => {
  const motion = emptyMotion(1);
  const odd = [-0, 5e-324, -1e-300, 1 / 3, -123.456e40, 2 ** 53 + 2];
  for (const { of } of COLUMNS) {
    const column = of(motion);
    for (let index = 0; index < column.length; index++) {
      column[index] = odd[index % odd.length] ?? 0;
    }
  }
  const back = decodeMotion('', encodeMotion(savedMotion(motion))).motion;
  for (const { of, name } of COLUMNS) {
    const same = of(back).every((value, index) => Object.is(value, of(motion)[index]));
    expect([name, same]).toEqual([name, true]);
  }
});

test('no array of a summary is left out', () => {
  const motion = emptyMotion(1);
  const arrays = (value: unknown): unknown[] => {
    if (ArrayBuffer.isView(value)) return [value];
    return value instanceof Object ? Object.values(value).flatMap(arrays) : [];
  };
  const columns: unknown[] = COLUMNS.map(({ of }) => of(motion));
  const left = arrays(motion).filter((array) => !columns.includes(array));
  expect(left).toEqual([]);
  expect(new Set(columns).size).toBe(arrays(motion).length);
});

test('the same motion gives the same bytes, wherever it was read from', () => {
  const saved = savedMotion(emptyMotion(3));
  const moved = { ...saved, source: { ...saved.source, path: '/elsewhere/x.wav' } };
  expect(encodeMotion(moved)).toEqual(encodeMotion(saved));
});
