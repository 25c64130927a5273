import { wavError } from './wav-error.js';
import { type ByteSource, readBytes } from './wav-source.js';

/** Sizes of chunks too long for 32 bits, from the ds64 chunk of RF64 and BW64. */
export interface LongSizes {
  /** False until a ds64 chunk was met. */
  readonly present: boolean;
  /** Size of the chunk of this name, bytes; null where ds64 does not tell or left it open. */
  of(id: string): number | null;
}

export const NO_LONG_SIZES: LongSizes = { present: false, of: () => null };

/** RIFF size, data size, sample count and length of the table. */
const FIXED_BYTES = 28;
/** A name and a 64-bit size. */
const ROW_BYTES = 12;
/** Only chunks over 4 GiB have a row. */
const MOST_ROWS = 64;

/**
 * Reads the ds64 chunk: 64-bit RIFF size, data size and sample count, then a table of further
 * chunks' sizes. Sizes over 2^53 come back inexact, which is past the end of any file all the same.
 * Source: EBU Tech 3306, ITU-R BS.2088 (both from memory).
 */
export async function readLongSizes(
  source: ByteSource,
  chunk: { readonly body: number; readonly size: number },
): Promise<LongSizes> {
  const length = Math.min(chunk.size, FIXED_BYTES + MOST_ROWS * ROW_BYTES);
  const bytes = await readBytes(source, chunk.body, length);
  if (bytes.length < FIXED_BYTES) {
    throw wavError(source.path, {
      code: 'bad-header',
      at: chunk.body,
      found: `a "ds64" chunk of ${bytes.length} bytes`,
      expected: `at least ${FIXED_BYTES}`,
      remedy: 'export the file again',
    });
  }
  const sizes = sizesIn(new DataView(bytes.buffer, 0, bytes.length));
  return { present: true, of: (id) => sizes.get(id) ?? null };
}

function sizesIn(view: DataView): ReadonlyMap<string, number> {
  const sizes = new Map([['data', view.getBigUint64(8, true)]]);
  const rows = Math.min(view.getUint32(24, true), (view.byteLength - FIXED_BYTES) / ROW_BYTES);
  for (let row = 0; row + 1 <= rows; row++) {
    const at = FIXED_BYTES + row * ROW_BYTES;
    const letters = [0, 1, 2, 3].map((letter) => view.getUint8(at + letter));
    const id = String.fromCharCode(...letters);
    if (!sizes.has(id)) sizes.set(id, view.getBigUint64(at + 4, true));
  }
  return new Map(
    [...sizes]
      .filter(([, size]) => size !== 0n && size !== 0xffff_ffff_ffff_ffffn)
      .map(([id, size]) => [id, Number(size)]),
  );
}
