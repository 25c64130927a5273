import { inflateSync } from 'node:zlib';
import { type Column, type ColumnType, ENTRY_BYTES } from './motion-columns.js';

/** More than the head of any groove moves, in any column's unit, and small enough to be squared. */
const LARGEST = 1e60;

/**
 * Unpacks what `packColumn` made into `column`, whose length says how much is expected: no more
 * than that is ever unpacked.
 * @returns what is wrong, in words; null if nothing is
 */
export function unpackColumn(packed: Uint8Array, type: ColumnType, column: Column): string | null {
  const width = ENTRY_BYTES[type];
  const planes = inflated(packed, column.length * width);
  if (planes === null) return 'bytes that cannot be unpacked';
  if (planes.length !== column.length * width) {
    return `${planes.length / width} entries where ${column.length} belong`;
  }
  const entry = new DataView(new ArrayBuffer(width));
  for (let index = 0; index < column.length; index++) {
    for (let byte = 0; byte < width; byte++) {
      entry.setUint8(byte, planes[byte * column.length + index] ?? 0);
    }
    const value = readEntry(entry, type);
    if (!(Math.abs(value) <= LARGEST)) return `${value} as entry ${index}`;
    column[index] = value;
  }
  return null;
}

/** null for what is no deflated stream, breaks off, or is longer than `most`. */
function inflated(packed: Uint8Array, most: number): Uint8Array | null {
  try {
    return inflateSync(packed, { maxOutputLength: most });
  } catch {
    return null;
  }
}

function readEntry(entry: DataView, type: ColumnType): number {
  if (type === 'float64') return entry.getFloat64(0, true);
  return type === 'uint32' ? entry.getUint32(0, true) : entry.getInt16(0, true);
}
