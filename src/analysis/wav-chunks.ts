import type { WavContainer } from './sound-file.js';
import { isPlainId, shownId, wavError } from './wav-error.js';
import { type LongSizes, NO_LONG_SIZES, readLongSizes } from './wav-long-sizes.js';
import { type ByteSource, readBytes } from './wav-source.js';

export type { WavContainer };

/** Where a chunk's content lies. */
export interface WavChunk {
  readonly id: string;
  /** Byte of its eight-byte head. */
  readonly at: number;
  /** Byte of its first content. */
  readonly body: number;
  /** Bytes the header promises, or, if it is `open`, all that is left of the file. */
  readonly size: number;
  /** The size was never filled in: a recorder that was cut off. */
  readonly open: boolean;
}

/** The two chunks a WAV file is read by. */
export interface WavChunks {
  readonly container: WavContainer;
  readonly format: WavChunk | null;
  readonly data: WavChunk | null;
  /** The last chunk the walk came to, for a message about what is missing. */
  readonly last: WavChunk | null;
}

/** A size of all ones: not known, or in the ds64 chunk. */
const OPEN_SIZE = 0xffffffff;
/** Recordings have a dozen; a file of nothing but heads must not keep the walk busy. */
const MOST_CHUNKS = 4096;

/**
 * Walks the chunks until both `fmt ` and `data` are found, in any order; all others are skipped,
 * only their heads are read. The first of each counts. A chunk of odd size is followed by a byte
 * of padding.
 * Source: RIFF and WAVE as in the Multimedia Programming Interface and Data Specifications 1.0
 * (1991); RF64 in EBU Tech 3306; BW64 in ITU-R BS.2088; all three from memory.
 */
export async function walkChunks(source: ByteSource): Promise<WavChunks> {
  const container = await readContainer(source);
  let longSizes = NO_LONG_SIZES;
  let format: WavChunk | null = null;
  let data: WavChunk | null = null;
  let last: WavChunk | null = null;
  let at = 12;
  for (let count = 0; at + 8 <= source.size && (format === null || data === null); count++) {
    if (count === MOST_CHUNKS) throw tooManyChunks(source, at);
    const chunk = await readChunk(source, at, longSizes);
    if (chunk.id === 'ds64' && container !== 'RIFF') longSizes = await readLongSizes(source, chunk);
    if (chunk.id === 'fmt ') format ??= chunk;
    if (chunk.id === 'data') {
      if (container !== 'RIFF' && chunk.open && !longSizes.present)
        throw noLongSizes(source, chunk);
      data ??= chunk;
    }
    last = chunk;
    at = endOf(chunk);
  }
  return { container, format, data, last };
}

async function readContainer(source: ByteSource): Promise<WavContainer> {
  const head = await readBytes(source, 0, 12);
  const outer = idAt(head, 0);
  const inner = idAt(head, 8);
  if (outer === 'RIFF' || outer === 'RF64' || outer === 'BW64') {
    if (inner === 'WAVE') return outer;
    throw notWav(source, 8, inner, '"WAVE"');
  }
  throw notWav(source, 0, outer, '"RIFF", "RF64" or "BW64"');
}

async function readChunk(source: ByteSource, at: number, longSizes: LongSizes): Promise<WavChunk> {
  const head = await readBytes(source, at, 8);
  const id = idAt(head, 0);
  const body = at + 8;
  const written = head.length < 8 ? 0 : new DataView(head.buffer).getUint32(4, true);
  const unknown = written === OPEN_SIZE || (id === 'data' && written === 0);
  if (!unknown) return { id, at, body, size: written, open: false };

  const long = longSizes.of(id);
  if (long !== null) return { id, at, body, size: long, open: false };
  // An empty chunk that others follow up to the end of the file is empty, not left open.
  if (id === 'data' && (await isTiled(source, body))) {
    return { id, at, body, size: 0, open: false };
  }
  return { id, at, body, size: source.size - body, open: true };
}

/**
 * True if the file from `from` on is nothing but whole chunks; also if nothing is there. Silence
 * looks like chunks of no length, but for their names.
 */
async function isTiled(source: ByteSource, from: number): Promise<boolean> {
  let at = from;
  for (let count = 0; at < source.size; count++) {
    const head = await readBytes(source, at, 8);
    if (count === MOST_CHUNKS || head.length < 8 || !isPlainId(idAt(head, 0))) return false;
    const size = new DataView(head.buffer).getUint32(4, true);
    if (at + 8 + size > source.size) return false;
    at += 8 + size + (size % 2);
  }
  return true;
}

function endOf(chunk: WavChunk): number {
  return chunk.body + chunk.size + (chunk.size % 2);
}

/** Four bytes as text, each byte a letter. */
function idAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}

function notWav(source: ByteSource, at: number, found: string, expected: string): Error {
  return wavError(source.path, {
    code: 'not-wav',
    at,
    found: source.size === 0 ? 'an empty file' : shownId(found),
    expected,
    remedy: 'export it as a WAV file',
  });
}

function tooManyChunks(source: ByteSource, at: number): Error {
  return wavError(source.path, {
    code: 'bad-header',
    at,
    found: `${MOST_CHUNKS} chunks without both a format and a data chunk`,
    expected: 'a "fmt " and a "data" chunk before that',
    remedy: 'the file is damaged: export it again',
  });
}

function noLongSizes(source: ByteSource, chunk: WavChunk): Error {
  return wavError(source.path, {
    code: 'bad-header',
    at: chunk.at + 4,
    found: 'a data chunk whose size is in a "ds64" chunk that is not there',
    expected: 'a "ds64" chunk first',
    remedy: 'export the file again',
  });
}
