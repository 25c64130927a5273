import type { Draw } from './draw.js';
import { withLie } from './numbers.js';
import type { Form } from './pieces.js';

/** Byte in the content, and bytes that it takes. */
type Field = readonly [at: number, width: number];

/** Numbers in the chunks that are read, counted from the first byte of the content. */
const FIELDS_OF: ReadonlyMap<string, readonly Field[]> = new Map<string, Field[]>([
  // Tag, channels, rate, bytes a second, block align, bits, extension, valid bits, mask, sub-format.
  ['fmt ', [...twos(0, 2), [4, 4], [8, 4], ...twos(12, 10), [20, 4], [24, 2], [26, 8]]],
  // Sizes of form and data, samples, rows, and the first row's size.
  [
    'ds64',
    [
      [0, 8],
      [8, 8],
      [8, 8],
      [16, 8],
      [24, 4],
      [28, 4],
      [32, 8],
    ],
  ],
  // Points, then name, position, chunk and sample of the first two.
  [
    'cue ',
    [
      [0, 4],
      [4, 4],
      [8, 4],
      [16, 4],
      [20, 4],
      [24, 4],
      [28, 4],
      [48, 4],
    ],
  ],
  // Size and name of the first two texts of a list.
  [
    'LIST',
    [
      [8, 4],
      [12, 4],
      [22, 4],
      [26, 4],
    ],
  ],
  // Channels, frames, bits, exponent and mantissa of the rate, compression.
  [
    'COMM',
    [
      [0, 2],
      [2, 4],
      [6, 2],
      [8, 2],
      [10, 8],
      [10, 4],
      [18, 4],
      [22, 1],
    ],
  ],
  // Offset and block size.
  [
    'SSND',
    [
      [0, 4],
      [0, 4],
      [4, 4],
    ],
  ],
]);

function twos(from: number, until: number): Field[] {
  return Array.from({ length: (until - from) / 2 + 1 }, (_, at) => [from + 2 * at, 2]);
}

/** A field of a head that is read says something else. */
export function fieldLies({ bytes, order, chunks }: Form, draw: Draw): Uint8Array | null {
  const chunk = draw.any(chunks.filter(({ id }) => FIELDS_OF.has(id)));
  const field = chunk && draw.any(FIELDS_OF.get(chunk.id) ?? []);
  if (chunk === null || field === null) return null;
  const [at, width] = field;
  return withLie(bytes, { at: chunk.body + at, width, order }, draw);
}
