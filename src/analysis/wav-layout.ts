import { isPlainId, wavError } from './wav-error.js';
import type { OpenWav } from './wav-file.js';
import { type LongSizes, NO_LONG_SIZES, readLongSizes } from './wav-long-sizes.js';
import { type ByteSource, readBytes } from './wav-source.js';

/** A chunk as far as it is there. */
export interface WavPiece {
  readonly id: string;
  /** Byte of its first content. */
  readonly body: number;
  /** Bytes of content that are there, whatever its head promises. */
  readonly size: number;
}

/** All that a WAV file consists of, for whoever makes another of it. */
export interface WavLayout {
  /** In the file's order; without ds64, whose sizes are those of the pieces. */
  readonly pieces: readonly WavPiece[];
  /** Which of the pieces is the sound. */
  readonly data: WavPiece;
  /** What ds64 says of the number of samples; null without one. */
  readonly sampleCount: bigint | null;
  /** Byte after the last chunk: what follows, to the end of the file, is none. */
  readonly end: number;
}

/** A size of all ones: not known, or in the ds64 chunk. */
const OPEN_SIZE = 0xffffffff;
/** Recordings have a dozen. */
const MOST_PIECES = 2 ** 16;

/** What is found on the way. */
interface Walk {
  readonly pieces: WavPiece[];
  longSizes: LongSizes;
  sampleCount: bigint | null;
  /** Where the form says that it ends; infinite where it does not say. */
  formEnd: number;
}

/**
 * Walks all chunks to the end of the file; only their heads are read. Recorders often leave the
 * form's own size wrong, so it decides only whether a last chunk that does not fit into the file is
 * cut off or no chunk at all, such as a tag of another kind that was put at the end.
 * Source: as in wav-chunks.ts.
 */
export async function readLayout({ source, file }: OpenWav): Promise<WavLayout> {
  const walk: Walk = {
    pieces: [],
    longSizes: NO_LONG_SIZES,
    sampleCount: null,
    formEnd: formEnd(BigInt((await numberAt(source, 4)) % OPEN_SIZE)),
  };
  let at = 12;
  while (at + 8 <= source.size) {
    if (walk.pieces.length === MOST_PIECES) throw tooManyPieces(source, at);
    const id = String.fromCharCode(...(await readBytes(source, at, 4)));
    const body = at + 8;
    const isData = body === file.dataOffset;
    const written = await numberAt(source, at + 4);
    const size = sizeOf(id, isData, written, walk.longSizes) ?? source.size - body;
    // What lies before sound and format was walked through to find them.
    const hasAll = at > file.dataOffset && walk.pieces.some((one) => one.id === 'fmt ');
    const isCut = body + size > source.size && at >= walk.formEnd;
    if (hasAll && (isCut || !isPlainId(id))) break;
    const piece = { id, body, size: Math.min(size, source.size - body) };
    if (id === 'ds64' && file.container !== 'RIFF') await takeLongSizes(source, piece, walk);
    else walk.pieces.push(piece);
    at = body + piece.size + (piece.size % 2);
  }
  const data = walk.pieces.find(({ body }) => body === file.dataOffset);
  if (data === undefined) throw new Error('the walk has passed by the data chunk');
  const { pieces, sampleCount } = walk;
  return { pieces, data, sampleCount, end: Math.min(at, source.size) };
}

async function numberAt(source: ByteSource, at: number): Promise<number> {
  return new DataView((await readBytes(source, at, 4)).buffer).getUint32(0, true);
}

function formEnd(size: bigint): number {
  return size === 0n ? Number.POSITIVE_INFINITY : 8 + Number(size);
}

/** What the head or ds64 promises; null where it was never filled in. */
function sizeOf(id: string, isData: boolean, written: number, longSizes: LongSizes): number | null {
  const isUnknown = written === OPEN_SIZE || (isData && written === 0);
  if (!isUnknown) return written;
  // ds64 means the first chunk of that name, which is the sound.
  return id === 'data' && !isData ? null : longSizes.of(id);
}

async function takeLongSizes(source: ByteSource, piece: WavPiece, walk: Walk): Promise<void> {
  walk.longSizes = await readLongSizes(source, piece);
  const view = new DataView((await readBytes(source, piece.body, 24)).buffer);
  walk.formEnd = formEnd(view.getBigUint64(0, true));
  walk.sampleCount = view.getBigUint64(16, true);
}

function tooManyPieces(source: ByteSource, at: number): Error {
  return wavError(source.path, {
    code: 'bad-header',
    at,
    found: `more than ${MOST_PIECES} chunks`,
    expected: 'fewer',
    remedy: 'the file is damaged: export it again',
  });
}
