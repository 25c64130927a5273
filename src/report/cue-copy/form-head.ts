import type { WavFile } from '../../analysis/wav-file.js';
import type { WavLayout, WavPiece } from '../../analysis/wav-layout.js';
import { chunkBytes } from './chunk-bytes.js';

/** What a size of 32 bits says where ds64 has the true one. */
const IN_DS64 = 0xffffffff;
const FIXED_BYTES = 28;
const ROW_BYTES = 12;

export interface FormHead {
  /** Everything before the first chunk, ds64 included. */
  readonly bytes: Uint8Array;
  /** True for RF64 and BW64. */
  readonly isLong: boolean;
}

/**
 * The head of a form that holds these pieces and `added` bytes of further chunks: RIFF, or RF64 and
 * BW64 with a ds64 chunk first.
 * Source: EBU Tech 3306, ITU-R BS.2088 (both from memory). What RF64 has as the number of samples
 * BW64 leaves unused; it is handed on there.
 */
export function formHead(file: WavFile, layout: WavLayout, added: number): FormHead {
  const chunks = layout.pieces.reduce((sum, { size }) => sum + 8 + size + (size % 2), 0) + added;
  const plainSize = 4 + chunks;
  const fitsRiff = file.container === 'RIFF' && plainSize < IN_DS64;
  if (fitsRiff) return { bytes: joinHead('RIFF', plainSize, new Uint8Array(0)), isLong: false };
  const container = file.container === 'RIFF' ? 'RF64' : file.container;
  const rows = layout.pieces.filter((piece) => piece !== layout.data && isTooLong(piece));
  const sizes = new DataView(new ArrayBuffer(FIXED_BYTES + rows.length * ROW_BYTES));
  sizes.setBigUint64(0, BigInt(plainSize + 8 + sizes.byteLength), true);
  sizes.setBigUint64(8, BigInt(layout.data.size), true);
  const samples = container === 'BW64' ? layout.sampleCount : null;
  sizes.setBigUint64(16, samples ?? BigInt(file.frames), true);
  sizes.setUint32(24, rows.length, true);
  for (const [row, { id, size }] of rows.entries()) {
    const at = FIXED_BYTES + row * ROW_BYTES;
    for (let letter = 0; letter < 4; letter++) sizes.setUint8(at + letter, id.charCodeAt(letter));
    sizes.setBigUint64(at + 4, BigInt(size), true);
  }
  const ds64 = chunkBytes('ds64', new Uint8Array(sizes.buffer));
  return { bytes: joinHead(container, IN_DS64, ds64), isLong: true };
}

/**
 * The eight bytes before a piece.
 * @param inDs64 whether ds64 has the size although it would fit, as that of the sound does
 */
export function chunkHead(piece: WavPiece, inDs64: boolean): Uint8Array {
  const bytes = new Uint8Array(8);
  bytes.set(Buffer.from(piece.id, 'latin1'));
  const size = inDs64 || isTooLong(piece) ? IN_DS64 : piece.size;
  new DataView(bytes.buffer).setUint32(4, size, true);
  return bytes;
}

function isTooLong({ size }: WavPiece): boolean {
  return size >= IN_DS64;
}

function joinHead(container: string, size: number, ds64: Uint8Array): Uint8Array {
  const bytes = new Uint8Array(12 + ds64.length);
  bytes.set(Buffer.from(`${container}\0\0\0\0WAVE`, 'latin1'));
  new DataView(bytes.buffer).setUint32(4, size, true);
  bytes.set(ds64, 12);
  return bytes;
}
