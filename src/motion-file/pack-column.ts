import { deflateSync } from 'node:zlib';
import { type Column, type ColumnType, ENTRY_BYTES } from './motion-columns.js';

/**
 * A column packed without loss: its entries' first (lowest) bytes, then all second bytes and so on,
 * then deflated (RFC 1950). Exponents of neighbours are alike, and beside each other they pack
 * well; the low bytes of numbers hardly pack at all.
 */
export function packColumn(column: Column, type: ColumnType): Uint8Array {
  const width = ENTRY_BYTES[type];
  const entry = new DataView(new ArrayBuffer(width));
  const planes = new Uint8Array(column.length * width);
  for (let index = 0; index < column.length; index++) {
    writeEntry(entry, type, column[index] ?? 0);
    for (let byte = 0; byte < width; byte++) {
      planes[byte * column.length + index] = entry.getUint8(byte);
    }
  }
  return deflateSync(planes, { level: 9 });
}

function writeEntry(entry: DataView, type: ColumnType, value: number): void {
  if (type === 'float64') entry.setFloat64(0, value, true);
  else if (type === 'uint32') entry.setUint32(0, value, true);
  else entry.setInt16(0, value, true);
}
