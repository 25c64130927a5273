import type { Draw } from './draw.js';

export type ByteOrder = 'little' | 'big';

/** Where a number lies in a file. */
export interface NumberPlace {
  readonly at: number;
  /** Bytes. */
  readonly width: number;
  readonly order: ByteOrder;
}

/** Numbers that a head may lie with: the ends of what each width holds, and what lies beside them. */
const LIES: readonly [bigint, ...bigint[]] = [
  0n,
  1n,
  2n,
  3n,
  7n,
  8n,
  ...[7n, 8n, 15n, 16n, 23n, 24n, 31n, 32n, 53n, 63n, 64n].flatMap((bits) => [
    2n ** bits - 2n,
    2n ** bits - 1n,
    2n ** bits,
    2n ** bits + 1n,
  ]),
];

/** A copy in which a number is another: one of the lies, or the old one and a little. */
export function withLie(
  bytes: Uint8Array,
  { at, width, order }: NumberPlace,
  draw: Draw,
): Uint8Array {
  const old = readNumber(bytes, { at, width, order });
  const off = draw.pick([1n, 2n, 4n, 8n, BigInt(bytes.length)]);
  const lie = draw.chance(0.3) ? old + (draw.chance(0.5) ? off : -off) : draw.pick(LIES);
  return withNumber(bytes, { at, width, order }, lie);
}

/** A copy in which a number is that one, as far as it fits there. */
export function withNumber(
  bytes: Uint8Array,
  { at, width, order }: NumberPlace,
  value: bigint,
): Uint8Array {
  const copy = Uint8Array.from(bytes);
  for (let byte = 0; byte < width && at + byte < copy.length; byte++) {
    const shift = BigInt(8 * (order === 'little' ? byte : width - 1 - byte));
    copy[at + byte] = Number((value >> shift) & 0xffn);
  }
  return copy;
}

/** What lies beyond the end reads as 0. */
export function readNumber(bytes: Uint8Array, { at, width, order }: NumberPlace): bigint {
  let value = 0n;
  for (let byte = 0; byte < width; byte++) {
    const place = order === 'little' ? width - 1 - byte : byte;
    value = 256n * value + BigInt(bytes[at + place] ?? 0);
  }
  return value;
}
