import { joined } from '../../support/wav-writer.js';
import type { Draw } from './draw.js';
import { type Mutation, oneOf } from './mutation.js';
import { withLie } from './numbers.js';
import { replaced } from './pieces.js';

/** Heads are where it hurts. */
const HEAD_BYTES = 80;

/** What can go wrong in any file, whatever its layout: a transfer, a disk, an editor. */
export const bytesWrong: Mutation = oneOf([
  [3, bitFlipped],
  [3, byteChanged],
  [2, numberChanged],
  [3, cutOff],
  [1, cutOut],
  [1, toldTwice],
  [1, overwritten],
  [1, grown],
]);

/** The beginning of one file, then the end of another. */
export function spliced(bytes: Uint8Array, other: Uint8Array, draw: Draw): Uint8Array {
  const until = placeIn(bytes, draw);
  return joined([bytes.subarray(0, until), other.subarray(placeIn(other, draw))]);
}

function placeIn(bytes: Uint8Array, draw: Draw): number {
  return draw.below(draw.chance(0.6) ? Math.min(bytes.length, HEAD_BYTES) : bytes.length);
}

function bitFlipped(bytes: Uint8Array, draw: Draw): Uint8Array {
  const copy = Uint8Array.from(bytes);
  const at = placeIn(bytes, draw);
  copy[at] = (copy[at] ?? 0) ^ (1 << draw.below(8));
  return copy;
}

function byteChanged(bytes: Uint8Array, draw: Draw): Uint8Array {
  const copy = Uint8Array.from(bytes);
  copy[placeIn(bytes, draw)] = draw.below(256);
  return copy;
}

function numberChanged(bytes: Uint8Array, draw: Draw): Uint8Array {
  const place = { at: placeIn(bytes, draw), width: draw.pick([2, 4, 8]) };
  return withLie(bytes, { ...place, order: draw.pick(['little', 'big']) }, draw);
}

function cutOff(bytes: Uint8Array, draw: Draw): Uint8Array {
  return bytes.slice(0, placeIn(bytes, draw));
}

function cutOut(bytes: Uint8Array, draw: Draw): Uint8Array {
  const [from, until] = stretch(bytes, draw);
  return replaced(bytes, from, until);
}

function toldTwice(bytes: Uint8Array, draw: Draw): Uint8Array {
  const [from, until] = stretch(bytes, draw);
  return replaced(bytes, until, until, bytes.slice(from, until));
}

function overwritten(bytes: Uint8Array, draw: Draw): Uint8Array {
  const [from, until] = stretch(bytes, draw);
  return Uint8Array.from(bytes).fill(draw.pick([0, 0xff]), from, until);
}

function grown(bytes: Uint8Array, draw: Draw): Uint8Array {
  return joined([bytes, new Uint8Array(1 + draw.below(300)).fill(draw.below(256))]);
}

function stretch(bytes: Uint8Array, draw: Draw): [from: number, until: number] {
  const from = placeIn(bytes, draw);
  return [from, Math.min(bytes.length, from + 1 + draw.below(draw.chance(0.5) ? 8 : 400))];
}
