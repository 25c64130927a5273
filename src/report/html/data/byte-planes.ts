/** What a page's data consist of. */
export type PageColumn = Float32Array | Uint32Array | Uint16Array | Int16Array | Uint8Array;

/** Takes the next column, of so many entries, out of a page's data. */
export interface TakeColumn {
  readonly float32: (length: number) => Float32Array;
  readonly uint32: (length: number) => Uint32Array;
  readonly uint16: (length: number) => Uint16Array;
  readonly int16: (length: number) => Int16Array;
  readonly uint8: (length: number) => Uint8Array;
}

/**
 * Columns as bytes: of each its entries' first bytes, then all second ones, and so on. Exponents of
 * neighbours are alike, and beside each other they pack well.
 * Every machine that a browser runs on is little endian, and so is the data.
 */
export function toPlanes(columns: readonly PageColumn[]): Uint8Array {
  const planes = new Uint8Array(columns.reduce((sum, column) => sum + column.byteLength, 0));
  let at = 0;
  for (const column of columns) {
    const bytes = new Uint8Array(column.buffer, column.byteOffset, column.byteLength);
    for (let byte = 0; byte < column.BYTES_PER_ELEMENT; byte++) {
      for (let index = 0; index < column.length; index++) {
        planes[at++] = bytes[index * column.BYTES_PER_ELEMENT + byte] ?? 0;
      }
    }
  }
  return planes;
}

/**
 * The columns of `toPlanes` one after the other; whoever takes one knows its type and length.
 * @throws RangeError beyond the last
 */
export function takeFrom(planes: Uint8Array): TakeColumn {
  let at = 0;
  const next = (width: number, length: number): ArrayBuffer => {
    if (at + width * length > planes.length) throw new RangeError('the data of the page break off');
    const bytes = new Uint8Array(width * length);
    for (let byte = 0; byte < width; byte++) {
      for (let index = 0; index < length; index++) {
        bytes[index * width + byte] = planes[at++] ?? 0;
      }
    }
    return bytes.buffer;
  };
  return {
    float32: (length) => new Float32Array(next(4, length)),
    uint32: (length) => new Uint32Array(next(4, length)),
    uint16: (length) => new Uint16Array(next(2, length)),
    int16: (length) => new Int16Array(next(2, length)),
    uint8: (length) => new Uint8Array(next(1, length)),
  };
}
