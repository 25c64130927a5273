// The files that are tried are what they are meant to be, or little would be tried.
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { digestOf } from '../../src/motion-file/motion-digest.js';
import { DIGEST_AT, HEAD_AT } from '../../src/motion-file/motion-layout.js';
import { crcOf } from '../support/flac-writer.js';
import { seeded } from '../support/signals.js';
import { fuzzCase } from './fuzz-case.js';
import { goodFiles, type Kind } from './good-files.js';
import { drawing } from './mutate/draw.js';
import { flacWrong } from './mutate/flac.js';
import { flacForm } from './mutate/flac-pieces.js';
import { readNumber, withLie } from './mutate/numbers.js';
import { chunksOf } from './mutate/pieces.js';

const GOODS = goodFiles();
const goodOf = (kind: Kind) => GOODS.find((good) => good.kind === kind)?.bytes ?? new Uint8Array(0);
const cases = (seed: number, count: number) =>
  Array.from({ length: count }, (_, index) => fuzzCase(GOODS, seed, index));
const hashOf = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');

describe('files with something wrong', () => {
  test('are the same for the same seed and number, and others for others', () => {
    const hashes = cases(7, 1000).map(({ bytes }) => hashOf(bytes));
    expect(cases(7, 1000).map(({ bytes }) => hashOf(bytes))).toEqual(hashes);
    expect(
      new Set([...hashes, ...cases(8, 1000).map(({ bytes }) => hashOf(bytes))]).size,
    ).toBeGreaterThan(1900);
  });

  test('leave the good ones as they are, and are rarely one of them', () => {
    const before = GOODS.map(({ bytes }) => hashOf(bytes));
    const made = cases(9, 1000).filter(({ good, bytes }) => hashOf(bytes) === hashOf(good.bytes));
    expect(made.length).toBeLessThan(30);
    expect(GOODS.map(({ bytes }) => hashOf(bytes))).toEqual(before);
  });
});

test('a lie changes its number and nothing beside it', () => {
  const bytes = Uint8Array.from({ length: 20 }, (_, at) => at + 1);
  for (const order of ['little', 'big'] as const) {
    const place = { at: 6, width: 4, order };
    const draw = drawing(seeded(3));
    const lies = Array.from({ length: 200 }, () => withLie(bytes, place, draw));
    expect(new Set(lies.map((lie) => readNumber(lie, place))).size).toBeGreaterThan(20);
    for (const lie of lies) {
      expect(lie.slice(0, 6)).toEqual(bytes.slice(0, 6));
      expect(lie.slice(10)).toEqual(bytes.slice(10));
    }
  }
  expect(readNumber(bytes, { at: 0, width: 2, order: 'big' })).toBe(0x0102n);
  expect(readNumber(bytes, { at: 0, width: 2, order: 'little' })).toBe(0x0201n);
});

test('chunks are found by their heads, with their padding, to the end of the file', () => {
  const chunks = chunksOf(goodOf('wav'), 'little');
  expect(chunks.map(({ id, at, body }) => [id, at, body])).toEqual([
    ['fmt ', 12, 20],
    ['data', 36, 44],
  ]);
  expect(chunks.at(-1)?.end).toBe(goodOf('wav').length);
});

test('most blocks of FLAC that are wrong have right checksums all the same', () => {
  const draw = drawing(seeded(5));
  const made = Array.from({ length: 300 }, () => flacWrong(goodOf('flac'), draw));
  const forms = made.flatMap((bytes) => (bytes === null ? [] : (flacForm(bytes) ?? [])));
  const blocks = forms.flatMap(({ bytes, blocks: all }) =>
    all.map(({ at, end }) => bytes.slice(at, end)),
  );
  const right = blocks.filter((block) => crcOf(block, 16, 0x8005) === 0);
  expect(blocks.length).toBeGreaterThan(1000);
  expect(right.length / blocks.length).toBeWithin(0.97, 0.03);
});

test('most saved motion that is wrong has a right checksum all the same', () => {
  const motions = cases(2, 8000).filter(({ good }) => good.kind === 'motion');
  const right = motions.filter(({ bytes }) => {
    return Buffer.compare(bytes.subarray(DIGEST_AT, HEAD_AT), digestOf(bytes)) === 0;
  });
  expect(right.length / motions.length).toBeWithin(0.85, 0.1);
});
