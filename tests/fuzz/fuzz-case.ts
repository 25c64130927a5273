import { seeded } from '../support/signals.js';
import type { GoodFile, Kind } from './good-files.js';
import { bytesWrong, spliced } from './mutate/bytes.js';
import { chunksWrong } from './mutate/chunks.js';
import { type Draw, drawing } from './mutate/draw.js';
import { flacWrong } from './mutate/flac.js';
import { motionWrong } from './mutate/motion.js';
import { type Mutation, oneOf } from './mutate/mutation.js';
import { textWrong } from './mutate/text.js';

/** A file with something wrong. */
export interface FuzzCase {
  readonly index: number;
  /** How often each good file has had its turn before. */
  readonly round: number;
  /** What it was made from. */
  readonly good: GoodFile;
  readonly bytes: Uint8Array;
}

/** By what a file is, what can go wrong in it that keeps its layout in mind. */
const WRONG_IN: Readonly<Record<Kind, Mutation>> = {
  wav: mostly(chunksWrong),
  aiff: mostly(chunksWrong),
  flac: mostly(flacWrong),
  motion: motionWrong,
  profile: textWrong,
  sheet: textWrong,
  accepted: textWrong,
  rules: textWrong,
};

function mostly(mutation: Mutation): Mutation {
  return oneOf([
    [3, mutation],
    [1, bytesWrong],
  ]);
}

/**
 * The file that a seed and a number mean, always the same: one of the good ones with one to three
 * things wrong, or the beginning of it and the end of another. All good ones come equally often.
 */
export function fuzzCase(goods: readonly GoodFile[], seed: number, index: number): FuzzCase {
  const draw = drawing(seeded(mixed(seed, index)));
  const good = goods[index % goods.length];
  if (good === undefined) throw new RangeError('no good file');
  let { bytes } = good;
  const other = draw.chance(0.04) ? draw.any(goods) : null;
  if (other !== null) bytes = spliced(bytes, other.bytes, draw);
  for (let left = draw.pick([1, 1, 1, 2, 3]); left > 0; left--) {
    bytes = onceWrong(bytes, WRONG_IN[good.kind], draw);
  }
  return { index, round: Math.floor(index / goods.length), good, bytes };
}

function onceWrong(bytes: Uint8Array, mutation: Mutation, draw: Draw): Uint8Array {
  return mutation(bytes, draw) ?? bytesWrong(bytes, draw) ?? bytes;
}

/**
 * Two numbers as one that differs in about half of its bits where either is another.
 * Source: the finalizer of MurmurHash3 (from memory).
 */
function mixed(seed: number, index: number): number {
  let hash = Math.imul(seed, 0x9e37_79b1) ^ Math.imul(index + 1, 0x85eb_ca6b);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85eb_ca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2_ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
