import { deflateSync, inflateSync } from 'node:zlib';
import { digestOf } from '../../../src/motion-file/motion-digest.js';
import { DIGEST_AT, HEAD_AT, HEAD_BYTES_AT } from '../../../src/motion-file/motion-layout.js';
import { joined } from '../../support/wav-writer.js';
import { bytesWrong } from './bytes.js';
import type { Draw } from './draw.js';
import { type Mutation, oneOf } from './mutation.js';
import { readNumber, withLie, withNumber } from './numbers.js';
import { replaced } from './pieces.js';
import { textWrong } from './text.js';

/** What can go wrong in saved motion, mostly by one who knows its checksum. */
export const motionWrong: Mutation = (bytes, draw) => {
  const changed = anyWrong(bytes, draw);
  return changed !== null && draw.chance(0.9) ? sealed(changed) : changed;
};

const anyWrong: Mutation = oneOf([
  [3, headWrong],
  [3, columnWrong],
  [1, (bytes, draw) => withLie(bytes, { at: HEAD_BYTES_AT, width: 4, order: 'little' }, draw)],
  [1, (bytes, draw) => withLie(bytes, { at: 8, width: 4, order: 'little' }, draw)],
  [1, bytesWrong],
]);

/** A copy whose checksum is right again. */
function sealed(bytes: Uint8Array): Uint8Array {
  if (bytes.length < HEAD_AT) return bytes;
  const copy = Uint8Array.from(bytes);
  copy.set(digestOf(copy), DIGEST_AT);
  return copy;
}

function headWrong(bytes: Uint8Array, draw: Draw): Uint8Array | null {
  const end = headEnd(bytes);
  const head = textWrong(bytes.slice(HEAD_AT, end), draw);
  return head && withHead(bytes, end, head);
}

/** A column is packed from bytes of which some are others, or more, or fewer. */
function columnWrong(bytes: Uint8Array, draw: Draw): Uint8Array | null {
  const end = headEnd(bytes);
  const head = Buffer.from(bytes.subarray(HEAD_AT, end)).toString();
  const columns = [...head.matchAll(/"name":"([^"]*)","bytes":(\d+)/g)];
  const column = draw.any(columns);
  if (column === null) return null;
  const sizes = columns.map(([, , size]) => Number(size));
  const index = columns.indexOf(column);
  const from = end + sizes.slice(0, index).reduce((sum, size) => sum + size, 0);
  const until = from + (sizes[index] ?? 0);
  const packed = repacked(bytes.subarray(from, until), draw);
  const length = `"name":"${column[1]}","bytes":${packed.length}`;
  const newHead = Buffer.from(head.replace(column[0], length));
  return withHead(replaced(bytes, from, until, packed), end, newHead);
}

function repacked(packed: Uint8Array, draw: Draw): Uint8Array {
  let planes: Uint8Array;
  try {
    planes = Uint8Array.from(inflateSync(packed, { maxOutputLength: 2 ** 20 }));
  } catch {
    return packed;
  }
  const length = planes.length;
  if (draw.chance(0.1))
    return deflateSync(joined([planes, new Uint8Array(draw.pick([1, 2 ** 20]))]));
  if (draw.chance(0.1)) return deflateSync(planes.subarray(0, draw.below(length)));
  // The last planes of numbers are their exponents.
  for (let left = draw.pick([1, 4, 40]); left > 0; left--) {
    planes[draw.chance(0.7) ? length - 1 - draw.below(Math.ceil(length / 4)) : draw.below(length)] =
      draw.pick([0, 0x7f, 0x80, 0xff, 0x3f, 0x40, 0xbf]);
  }
  return deflateSync(planes);
}

function headEnd(bytes: Uint8Array): number {
  const size = readNumber(bytes, { at: HEAD_BYTES_AT, width: 4, order: 'little' });
  return Math.min(bytes.length, HEAD_AT + Number(size));
}

function withHead(bytes: Uint8Array, end: number, head: Uint8Array): Uint8Array {
  const whole = replaced(bytes, HEAD_AT, end, head);
  return withNumber(whole, { at: HEAD_BYTES_AT, width: 4, order: 'little' }, BigInt(head.length));
}
